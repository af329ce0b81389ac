import type { ConductorMaterial } from './conductor-materials'
import { derived, derivedOnMemory, restsOnMemory, type Source, type Sources } from './sources'

export interface Strand {
  readonly count: number
  readonly diameterMm: number
  readonly material: ConductorMaterial
}

/** One insulated conductor: its strands, all in parallel. */
export interface Conductor {
  readonly strands: readonly Strand[]
  /** Length of strand in a unit length of cable: 1 where straight, more where twisted. */
  readonly takeUp: number
}

export const solid = (material: ConductorMaterial, diameterMm: number, takeUp = 1): Conductor => ({
  strands: [{ count: 1, diameterMm, material }],
  takeUp,
})

const areaMm2 = (strand: Strand) => strand.count * (Math.PI / 4) * strand.diameterMm ** 2

const sum = (conductor: Conductor, quantity: (strand: Strand) => number) =>
  conductor.strands.reduce((total, strand) => total + quantity(strand), 0)

const siemensPerKm = (strand: Strand) => areaMm2(strand) / strand.material.ohmMm2PerM / 1000

/**
 * Length of a twisted wire in a unit length of its cable: √(1 + (πd/p)²).
 *
 * Source: geometry of the helix.
 *
 * @param pitchCircleMm d, diameter of the circle on which the wire's axis runs, mm
 * @param layMm p, length of cable in one turn, mm
 */
export const helixTakeUp = (pitchCircleMm: number, layMm: number): number =>
  Math.hypot(1, (Math.PI * pitchCircleMm) / layMm)

/**
 * DC resistance of one conductor at 20 °C, Ω per km of cable: its strands in parallel, times the take-up.
 *
 * R = ρ l / A for each strand. Source: IEC 60228, clause on resistance by measurement and make-up.
 */
export const conductorOhmPerKm = (conductor: Conductor): number =>
  conductor.takeUp / sum(conductor, siemensPerKm)

/** Temperature coefficient of the conductor at 20 °C, 1/°C: its strands' own, weighted by their conductance. */
export const conductorTempCoeffPerC = (conductor: Conductor): number =>
  sum(conductor, (strand) => siemensPerKm(strand) * strand.material.tempCoeffPerC) /
  sum(conductor, siemensPerKm)

/** Mass of the metal of one conductor, kg per km of cable. */
export const conductorKgPerKm = (conductor: Conductor): number =>
  (conductor.takeUp * sum(conductor, (strand) => areaMm2(strand) * strand.material.kgPerM3)) / 1000

/** Breaking strength of one conductor, N: the sum over its strands. */
export const conductorBreakN = (conductor: Conductor): number =>
  sum(conductor, (strand) => areaMm2(strand) * strand.material.breakNPerMm2)

const stiffnessN = (strand: Strand) => areaMm2(strand) * strand.material.modulusNPerMm2

/** How so many conductors stretch side by side: E·A, N, and the expansion of strands that cannot slip, weighted by their stiffness, 1/°C. */
export const stretchOfConductors = (
  conductor: Conductor,
  count: number,
): { readonly stiffnessN: number; readonly expansionPerC: number } => ({
  stiffnessN: count * sum(conductor, stiffnessN),
  expansionPerC:
    sum(conductor, (strand) => stiffnessN(strand) * strand.material.expansionPerC) /
    sum(conductor, stiffnessN),
})

/** Where elasticity and expansion of a conductor come from: its metals'. */
export function stretchSources({ strands }: Conductor): Sources {
  const from = (figure: 'modulusNPerMm2' | 'expansionPerC', what: string): Source => {
    const sources = [...new Set(strands.map(({ material }) => material.sources[figure]))]
    const says = `${what} ${sources.map((source) => source.says).join(' ')}`
    return sources.some(restsOnMemory) ? derivedOnMemory(says) : derived(says)
  }
  return {
    stiffnessN: from('modulusNPerMm2', 'The area of the metal times its elasticity:'),
    expansionPerC: from('expansionPerC', 'That of the metals, weighted by their stiffness:'),
  }
}
