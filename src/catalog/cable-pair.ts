import {
  allowance,
  dataSheet,
  derived,
  derivedOnMemory,
  fromMemory,
  type Source,
  type Sources,
  type Spread,
} from './sources'

/** Length of a wire in a unit length of twisted cable. */
export const PAIR_TAKE_UP = 1.018
export const TAKE_UP_SOURCE =
  '1.8 % more wire than cable, as in a published table of cable pairs (line-equipment installation practice, 2003, table 9)'

export const CABLE_SPREAD: Spread = {
  loopOhmPerKm: 3,
  nanoFPerKm: 8,
  loopMilliHPerKm: 15,
  dryMicroSPerKm: 300,
  wetMicroSPerKm: 300,
  wornMicroSPerKm: 200,
  kgPerKm: 15,
  breakN: 20,
}

export const CABLE_SOURCES: Sources = {
  nanoFPerKm: dataSheet('About 52 nF/km: data sheets of plastic cable of 0.5 mm to IEC 60708.'),
  loopMilliHPerKm: fromMemory(
    'About 1 mH per mile (Reference Data for Radio Engineers, exchange-cable table), from memory.',
  ),
  dryMicroSPerKm: fromMemory('A sound pair with field splices, from memory; the cable alone is far better.'),
  wetMicroSPerKm: fromMemory('A jacketed pair with taped splices in the wet, from memory.'),
  wornMicroSPerKm: allowance('Allowance: a jacket cut here and there, and water in it.'),
  outsideMm: derivedOnMemory('Two insulated wires in their jacket.'),
  spread: allowance('Allowance.'),
  'spread.loopOhmPerKm': allowance('Allowance: gauges are held to 1 % of the diameter, twists differ.'),
  'spread.nanoFPerKm': fromMemory('79 to 87 nF per mile are allowed, from memory.'),
}

/** Reckoned from a metal: from memory where the metal's own figure is. */
export const fromMetal = (says: string, source: Source): Source =>
  (source.kind === 'memory' ? derivedOnMemory : derived)(`${says}: ${source.says}`)
