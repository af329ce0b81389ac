import { fromMetal } from './cable-pair'
import {
  type Conductor,
  conductorBreakN,
  conductorKgPerKm,
  conductorOhmPerKm,
  conductorTempCoeffPerC,
  stretchOfConductors,
  stretchSources,
} from './conductor'
import { type PairGeometry, pairMilliHPerKm, pairNanoFPerKm } from './pair-geometry'
import {
  allowance,
  derived,
  derivedOnMemory,
  fromMemory,
  practice,
  type Sources,
  type Spread,
} from './sources'
import type { Wire } from './wire'

/** A film of water round a pair without a jacket raises its capacitance by half: an allowance; field wire's rises nearly threefold. */
const WET_FILM = 1.5

const BARE_SPREAD: Spread = {
  loopOhmPerKm: 5,
  nanoFPerKm: 20,
  loopMilliHPerKm: 20,
  dryMicroSPerKm: 300,
  wetMicroSPerKm: 300,
  kgPerKm: 10,
  breakN: 20,
}
const COVERED_SPREAD: Spread = { ...BARE_SPREAD, wetNanoFPerKm: 40, wornMicroSPerKm: 200 }

/** Two conductors side by side: inductance and capacitance follow from how far apart they are. */
export function parallelWire(w: {
  readonly id: string
  readonly name: string
  readonly conductor: Conductor
  readonly geometry: PairGeometry
  readonly relativePermittivity: number
  readonly relativePermeability?: number
  readonly dryMicroSPerKm: number
  readonly wetMicroSPerKm: number
  readonly wornMicroSPerKm?: number
  readonly insulationKgPerKm: number
  readonly outsideMm: number
  readonly spoolsM: readonly number[]
  readonly source: string
  readonly makeUp: string
  readonly leakage: string
  /** Figures that were read or measured, in the place of those that follow from the make-up, and what speaks for them. */
  readonly known?: Partial<Wire>
  readonly sources?: Sources
  readonly spread?: Spread
}): Wire {
  const bare = w.relativePermittivity === 1
  const { material } = w.conductor.strands[0]!
  const nanoFPerKm = w.known?.nanoFPerKm ?? pairNanoFPerKm(w.geometry, w.relativePermittivity)
  const apart = `Two round wires ${w.geometry.spacingMm.toFixed(1)} mm apart`
  const leakage = fromMemory(w.leakage)
  return {
    id: w.id,
    name: w.name,
    loopOhmPerKm: 2 * conductorOhmPerKm(w.conductor),
    tempCoeffPerC: conductorTempCoeffPerC(w.conductor),
    nanoFPerKm,
    loopMilliHPerKm: pairMilliHPerKm(w.geometry, w.relativePermeability ?? 1),
    dryMicroSPerKm: w.dryMicroSPerKm,
    wetMicroSPerKm: w.wetMicroSPerKm,
    ...(bare ? {} : { wetNanoFPerKm: nanoFPerKm * WET_FILM, wornMicroSPerKm: w.wornMicroSPerKm ?? 250 }),
    kgPerKm: 2 * conductorKgPerKm(w.conductor) + w.insulationKgPerKm,
    breakN: 2 * conductorBreakN(w.conductor),
    spoolsM: w.spoolsM,
    ...stretchOfConductors(w.conductor, 2),
    ...(w.relativePermeability !== undefined && { relativePermeability: w.relativePermeability }),
    outsideMm: w.outsideMm,
    ...(bare && { hangsApart: 2 }),
    source: w.source,
    ...w.known,
    sources: {
      loopOhmPerKm: fromMetal(`From ${w.makeUp}`, material.sources.ohmMm2PerM),
      tempCoeffPerC: fromMetal('The metal’s', material.sources.tempCoeffPerC),
      nanoFPerKm: bare
        ? derived(`${apart} in air.`)
        : derivedOnMemory(`${apart} in an effective permittivity of ${w.relativePermittivity}, from memory.`),
      loopMilliHPerKm:
        w.relativePermeability === undefined
          ? derived(`${apart}.`)
          : derivedOnMemory(
              `${apart}, with a relative permeability of ${w.relativePermeability} from memory.`,
            ),
      relativePermeability: fromMemory(
        'From memory: about 100 for soft iron and steel at telephone currents; tables have 80 to 200.',
      ),
      dryMicroSPerKm: leakage,
      wetMicroSPerKm: leakage,
      wetNanoFPerKm: allowance('Allowance: half more than dry for the film of water round it.'),
      wornMicroSPerKm: fromMemory('Old, nicked or damaged insulation, 100 to 500 µS/km, from memory.'),
      kgPerKm:
        w.insulationKgPerKm > 0
          ? derivedOnMemory(
              `The metal by its density, and ${w.insulationKgPerKm} kg/km of insulation from memory.`,
            )
          : fromMetal('The metal by its density', material.sources.kgPerM3),
      breakN: fromMetal(`Two wires of ${material.breakNPerMm2} N/mm²`, material.sources.breakNPerMm2),
      spoolsM: practice('Usual trade lengths.'),
      outsideMm: bare
        ? derived('The bare wire.')
        : derivedOnMemory('As wide as a rod of this size: two insulated wires, from memory.'),
      hangsApart: derived('Two bare wires, apart.'),
      ...stretchSources(w.conductor),
      spread: allowance('Allowance.'),
      ...w.sources,
    },
    spread: {
      ...(bare ? BARE_SPREAD : COVERED_SPREAD),
      ...(w.relativePermeability !== undefined && { relativePermeability: 100 }),
      ...w.spread,
    },
  }
}
