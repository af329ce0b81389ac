import { GEAR_KG, type GearKind } from '../catalog/line-gear'
import { WORK } from '../plan/work'

/** What a load list rests on besides the plan; a person can change each value. */
export interface LoadAllowances {
  /** Most that one person carries on one trip, kg. */
  readonly perPersonKg: number
  /** All who carry, and the crews that they make: each has its tools. */
  readonly people: number
  readonly crews: number
  /** Mass of a telephone with its battery box empty, kg, where the catalog has none. */
  readonly setKg: number
  /** Cells in a local-battery set, and their mass, kg. */
  readonly cellsPerSet: number
  readonly cellKg: number
  /** Battery and box of one supply, kg, where the catalog has none. */
  readonly supplyKg: number
  /** Spare batteries carried beyond those in use, %. */
  readonly spareBatteriesPct: number
  /** Tools and test set of one crew, kg. */
  readonly toolsKg: number
  /** The test set among them, kg. */
  readonly testSetKg: number
  /** One of each thing that lines take besides their wire, kg. */
  readonly gearKg: Readonly<Record<GearKind, number>>
  /** Empty reel as a share of the wire on it, %, where the catalog knows no container. */
  readonly reelPct: number
}

/** Where the allowances come from. */
export const LOAD_SOURCES: Readonly<Record<Exclude<keyof LoadAllowances, 'crews' | 'gearKg'>, string>> = {
  perPersonKg: 'allowance: about a third of a person’s own mass is common practice for a march',
  people: 'four on a man-pack team: Popular Science Monthly 90 (1917), p. 820',
  setKg:
    'about 9.75 lb with battery for a crank set in a case: a collector’s page on TM 11-333; less the cells',
  cellsPerSet: 'two or three dry cells: US Army subcourse SS0330, p. 69, par. 38',
  cellKg: 'allowance, from memory: an alkaline cell LR20 has about 0.14 kg',
  supplyKg: 'allowance, from memory',
  spareBatteriesPct: 'allowance: one spare for each in use',
  toolsKg: 'allowance, from memory: pliers, knife, tape, climbers, test set',
  testSetKg: 'allowance, from memory',
  reelPct: 'allowance, from memory',
}

export const DEFAULT_LOADS: LoadAllowances = {
  perPersonKg: WORK.personLimitKg.usual,
  people: WORK.peoplePerCrew.usual,
  crews: WORK.crews.usual,
  setKg: WORK.setKg.usual,
  cellsPerSet: WORK.cellsPerSet.usual,
  cellKg: WORK.cellKg.usual,
  supplyKg: WORK.supplyKg.usual,
  spareBatteriesPct: WORK.spareBatteriesPct.usual,
  toolsKg: WORK.toolsKg.usual,
  testSetKg: WORK.testSetKg.usual,
  gearKg: GEAR_KG,
  reelPct: WORK.reelPct.usual,
}
