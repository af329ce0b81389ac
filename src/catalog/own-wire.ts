import { bad, ok, type Result } from '../problem'
import { awgDiameterMm } from './awg'
import {
  type Conductor,
  conductorBreakN,
  conductorKgPerKm,
  conductorOhmPerKm,
  conductorTempCoeffPerC,
  stretchOfConductors,
  stretchSources,
} from './conductor'
import {
  ALUMINIUM,
  CADMIUM_COPPER,
  COPPER,
  COPPER_CLAD_ALUMINIUM,
  COPPER_CLAD_STEEL_30,
  GALVANISED_STEEL,
  HARD_DRAWN_COPPER,
} from './conductor-materials'
import { pairMilliHPerKm, pairNanoFPerKm } from './pair-geometry'
import { allowance, derived, derivedOnMemory, fromMemory } from './sources'
import type { Wire } from './wire'

/** Metals of which a person's own wire may be. */
export const METALS = {
  copper: COPPER,
  'hard-drawn-copper': HARD_DRAWN_COPPER,
  'cadmium-copper': CADMIUM_COPPER,
  aluminium: ALUMINIUM,
  'copper-clad-aluminium': COPPER_CLAD_ALUMINIUM,
  'copper-clad-steel': COPPER_CLAD_STEEL_30,
  steel: GALVANISED_STEEL,
} as const

/** How its two conductors lie together: what follows from that besides the metal. Allowances, of the order of the built-in wires. */
export const BUILDS = {
  jacketed: {
    plastic: 2.3,
    takeUp: 1.02,
    permittivity: 2.2,
    apart: 1.7,
    plasticMm: 0.3,
    jacketMm: 0.8,
    dry: 0.1,
    wet: 1,
    worn: 50,
    wetFilm: 1,
  },
  twisted: {
    plastic: 3,
    takeUp: 1.02,
    permittivity: 2.6,
    apart: 2,
    plasticMm: 0.5,
    jacketMm: 0,
    dry: 0.5,
    wet: 25,
    worn: 250,
    wetFilm: 2.5,
  },
  'side-by-side': {
    plastic: 4,
    takeUp: 1,
    permittivity: 3,
    apart: 2.3,
    plasticMm: 0.6,
    jacketMm: 0,
    dry: 1,
    wet: 30,
    worn: 250,
    wetFilm: 1.5,
  },
  'bare-apart': {
    plastic: 1,
    takeUp: 1,
    permittivity: 1,
    apart: 0,
    plasticMm: 0,
    jacketMm: 0,
    dry: 5,
    wet: 200,
    worn: 200,
    wetFilm: 1,
  },
} as const

/**
 * Relative permittivity of what lies round the metal, from memory; `usual`: what the build has as a rule. One pair's effective permittivity
 * lies between 1 and that, as far as air lies between the wires too. What `plastic` a build usually has stands with it.
 */
export const INSULATIONS = {
  usual: null,
  polyethylene: 2.3,
  foam: 1.6,
  vinyl: 4,
  rubber: 3.5,
  fluoropolymer: 2.1,
} as const

/** What a person can read off a cut end. */
export interface MakeUp {
  readonly id: string
  readonly name: string
  readonly metal: keyof typeof METALS
  readonly strands: number
  /** Diameter of one strand, mm; or the American gauge of the whole conductor, however many strands it has. */
  readonly gauge: { readonly strandMm: number } | { readonly awg: number }
  readonly build: keyof typeof BUILDS
  /** What lies round the metal; of bare wires without meaning. */
  readonly insulation?: keyof typeof INSULATIONS
  /** Capacitance of the pair, where it is known, nF/km. */
  readonly nanoFPerKm?: number
  /** Axis to axis, mm: of bare wires apart; else as wide as the insulation makes it. */
  readonly spacingMm?: number
}

const fault = (at: string, message: string) => bad({ code: 'out-of-range', at, message })

/** Between polyethylene (930) and vinyl (1400): an allowance. */
const PLASTIC_KG_PER_M3 = 1150

/** Relative permeability of soft iron and steel at telephone currents, from memory. */
const STEEL_PERMEABILITY = 100

/** A wire from its metal, strands and gauge. What a cut end does not show is an allowance with a wide spread: a meter reading is better. */
export function wireFromMakeUp(makeUp: MakeUp): Result<Wire> {
  const { strands, gauge, build } = makeUp
  if (!(Number.isInteger(strands) && strands >= 1 && strands <= 1000))
    return fault('strands', `${strands} strands: give a whole number from 1 to 1,000.`)
  if ('awg' in gauge && !(gauge.awg >= -3 && gauge.awg <= 40))
    return fault('gauge', `Gauge ${gauge.awg}: give one from 0000 (-3) to 40.`)
  const strandMm = 'awg' in gauge ? awgDiameterMm(gauge.awg) / Math.sqrt(strands) : gauge.strandMm
  if (!(strandMm >= 0.02 && strandMm <= 10))
    return fault('gauge', `A strand of ${strandMm} mm: give a diameter from 0.02 to 10 mm.`)
  const material = METALS[makeUp.metal]
  const { takeUp, apart, plasticMm, jacketMm, dry, wet, worn, wetFilm } = BUILDS[build]
  const conductor: Conductor = { strands: [{ count: strands, diameterMm: strandMm, material }], takeUp }
  // A rope of round strands is a seventh wider than a solid wire of its metal.
  const diameterMm = strandMm * Math.sqrt(strands) * (strands === 1 ? 1 : 1.15)
  const spacingMm =
    makeUp.spacingMm ?? (build === 'bare-apart' ? 300 : Math.max(diameterMm * apart, diameterMm + plasticMm))
  if (!(spacingMm > diameterMm))
    return fault(
      'spacingMm',
      `A spacing of ${spacingMm} mm: give more than the ${diameterMm.toFixed(2)} mm of one wire.`,
    )
  const isSolidSteel = makeUp.metal === 'steel' && strands === 1
  const geometry = { spacingMm, diameterMm }
  const permittivity = permittivityOf(makeUp)
  const typedNanoF = makeUp.nanoFPerKm
  if (typedNanoF !== undefined && !(typedNanoF >= 0.01 && typedNanoF <= 1e4))
    return fault('nanoFPerKm', `A capacitance of ${typedNanoF} nF/km: give one from 0.01 to 10,000.`)
  const nanoFPerKm = typedNanoF ?? pairNanoFPerKm(geometry, permittivity)
  const insulatedMm = diameterMm + 2 * plasticMm
  const boreMm = 2 * insulatedMm
  const ringMm2 = (outerMm: number, innerMm: number) => (Math.PI / 4) * (outerMm ** 2 - innerMm ** 2)
  const plasticMm2 = 2 * ringMm2(insulatedMm, diameterMm) + ringMm2(boreMm + 2 * jacketMm, boreMm)
  const plasticKgPerKm = (plasticMm2 * PLASTIC_KG_PER_M3) / 1000
  const bare = build === 'bare-apart'
  const says = `${strands} × ${Number(strandMm.toPrecision(3))} mm of ${material.name}`
  return ok({
    id: makeUp.id,
    name: makeUp.name,
    loopOhmPerKm: 2 * conductorOhmPerKm(conductor),
    tempCoeffPerC: conductorTempCoeffPerC(conductor),
    nanoFPerKm,
    loopMilliHPerKm: pairMilliHPerKm(geometry, isSolidSteel ? STEEL_PERMEABILITY : 1),
    dryMicroSPerKm: dry,
    wetMicroSPerKm: wet,
    ...(wetFilm > 1 && { wetNanoFPerKm: nanoFPerKm * wetFilm }),
    ...(!bare && { wornMicroSPerKm: worn }),
    kgPerKm: 2 * conductorKgPerKm(conductor) + plasticKgPerKm,
    breakN: 2 * conductorBreakN(conductor),
    spoolsM: [],
    ...stretchOfConductors(conductor, 2),
    ...(isSolidSteel && { relativePermeability: STEEL_PERMEABILITY }),
    outsideMm: bare ? diameterMm : 1.5 * insulatedMm,
    ...(bare && { hangsApart: 2 }),
    source: `reckoned from a cut end: ${says}`,
    sources: {
      loopOhmPerKm: (material.sources.ohmMm2PerM.kind === 'memory' ? derivedOnMemory : derived)(
        `${says}, two wires.`,
      ),
      tempCoeffPerC: material.sources.tempCoeffPerC,
      nanoFPerKm:
        typedNanoF === undefined
          ? derivedOnMemory(
              `Two wires ${spacingMm.toFixed(1)} mm apart in an effective permittivity of ${permittivity.toFixed(1)}.`,
            )
          : 'Typed by hand.',
      loopMilliHPerKm: derivedOnMemory(`Two wires ${spacingMm.toFixed(1)} mm apart.`),
      dryMicroSPerKm: allowance('Allowance for wire of this build.'),
      wetMicroSPerKm: allowance('Allowance for wire of this build.'),
      wetNanoFPerKm: allowance('Allowance: a film of water round it.'),
      wornMicroSPerKm: allowance('Allowance for old, nicked wire of this build.'),
      kgPerKm: derivedOnMemory('The metal by its density, and an allowance of plastic.'),
      breakN: derivedOnMemory(`The metal at ${material.breakNPerMm2} N/mm².`),
      relativePermeability: fromMemory(
        'From memory: about 100 for soft iron and steel at telephone currents.',
      ),
      ...stretchSources(conductor),
      outsideMm: allowance('Allowance for wire of this build.'),
      hangsApart: derived('Two bare wires, apart.'),
      spread: allowance('Allowance: a cut end tells the metal and the gauge, not the rest.'),
    },
    spread: {
      loopOhmPerKm: 8,
      ...(typedNanoF === undefined && { nanoFPerKm: 35 }),
      ...(wetFilm > 1 && { wetNanoFPerKm: 50 }),
      loopMilliHPerKm: 30,
      dryMicroSPerKm: 300,
      wetMicroSPerKm: 300,
      ...(!bare && { wornMicroSPerKm: 200 }),
      kgPerKm: 20,
      breakN: 25,
    },
  })
}

/** Effective permittivity between the wires: as far above that of air as its plastic is above the usual one of the build. */
function permittivityOf({ build, insulation = 'usual' }: MakeUp): number {
  const { permittivity, plastic } = BUILDS[build]
  const given = INSULATIONS[insulation] ?? plastic
  return plastic === 1 ? permittivity : 1 + ((permittivity - 1) * (given - 1)) / (plastic - 1)
}
