import { LAYING_RATES, LAYING_SOURCES } from '../catalog/laying-rates'
import { GEAR_SOURCES } from '../catalog/line-gear'
import { LOAD_SOURCES } from '../materials/load-allowances'
import { TAGGING_SOURCE } from '../measure/line-tags'
import type { Lay } from '../plan/plan'
import type { WorkField } from '../plan/work'
import type { Tongue } from './tongue'

const RATE = 'How fast a full crew lays wire by day on level ground.'

/** What each figure of the work is for. */
export const WORK_SAYS: Readonly<Record<WorkField, string>> = {
  talkMinutesPerDay: 'How long each circuit talks in a day: how long a battery lasts follows from it.',
  ringMinutesPerDay: 'How long each circuit rings in a day: units with watts of their own draw most then.',
  crews: 'Crews that lay lines at the same time.',
  peoplePerCrew: 'A crew with fewer than a lay takes is slower in proportion.',
  night: '1 where the net is laid and taken up by night.',
  nightFactor: 'How many times longer everything takes by night.',
  surfaceKmPerHour: RATE,
  overheadKmPerHour: RATE,
  buriedKmPerHour: RATE,
  waterKmPerHour: RATE,
  recoveryKmPerHour: 'How fast wire is taken up again.',
  walkKmPerHour: 'Out with a load, back without one, and home.',
  climbMPerHour: 'Ascent that costs an hour besides the distance.',
  buriedCrossingMin: 'One road or track.',
  overheadCrossingMin: 'On poles.',
  railwayCrossingMin: 'Under the rails; leave to cross them is not counted.',
  spliceMin: 'With its test.',
  stationMin: 'To put it in and test it.',
  personLimitKg: 'What one person carries on one trip.',
  setKg: 'A telephone with its battery box empty, where the catalog does not say.',
  cellsPerSet: 'Dry cells in a set that feeds itself.',
  cellKg: 'One dry cell.',
  supplyKg: 'Battery and box, where the catalog does not say.',
  spareBatteriesPct: 'Carried besides those in use.',
  toolsKg: 'With its test set.',
  testSetKg: 'Of the tools of a crew.',
  tagKg: 'With its tie.',
  rodKg: 'Two for each line with earth return.',
  lanceKg: 'A pole for wire overhead.',
  guyKg: 'Two for each lance, four at every tenth.',
  stakeKg: 'One for each guy and at the foot of each lance.',
  weightKg: 'What holds wire down in water.',
  reelPct: 'Of the wire on it, where the catalog has no figure.',
  testEveryM: 'The longest stretch of ground without one.',
  tagEveryM: 'The longest stretch of ground without one.',
}

/** Where a usual figure comes from; its own figures as they were printed. */
const SOURCES: Readonly<Partial<Record<WorkField, string>>> = {
  peoplePerCrew: LAYING_SOURCES.people,
  nightFactor: LAYING_SOURCES.nightFactor,
  recoveryKmPerHour: LAYING_SOURCES.recoveryKmPerHour,
  walkKmPerHour: LAYING_SOURCES.walkKmPerHour,
  climbMPerHour: LAYING_SOURCES.climbMPerHour,
  buriedCrossingMin: LAYING_SOURCES.buriedCrossingMin,
  overheadCrossingMin: LAYING_SOURCES.overheadCrossingMin,
  railwayCrossingMin: LAYING_SOURCES.railwayCrossingMin,
  spliceMin: LAYING_SOURCES.spliceMin,
  stationMin: LAYING_SOURCES.stationMin,
  personLimitKg: LOAD_SOURCES.perPersonKg,
  setKg: LOAD_SOURCES.setKg,
  cellsPerSet: LOAD_SOURCES.cellsPerSet,
  cellKg: LOAD_SOURCES.cellKg,
  supplyKg: LOAD_SOURCES.supplyKg,
  spareBatteriesPct: LOAD_SOURCES.spareBatteriesPct,
  toolsKg: LOAD_SOURCES.toolsKg,
  testSetKg: LOAD_SOURCES.testSetKg,
  tagKg: GEAR_SOURCES.tag!.says,
  rodKg: GEAR_SOURCES.rod!.says,
  lanceKg: GEAR_SOURCES.lance!.says,
  guyKg: GEAR_SOURCES.guy!.says,
  stakeKg: GEAR_SOURCES.stake!.says,
  weightKg: GEAR_SOURCES.weight!.says,
  reelPct: LOAD_SOURCES.reelPct,
  testEveryM: TAGGING_SOURCE,
  tagEveryM: TAGGING_SOURCE,
}

const LAYS: Readonly<Partial<Record<WorkField, Lay>>> = {
  surfaceKmPerHour: 'surface',
  overheadKmPerHour: 'overhead',
  buriedKmPerHour: 'buried',
  waterKmPerHour: 'water',
}

/** Where the usual figure of the work comes from; empty where nobody needs to be asked. */
export function workSource(field: WorkField, { quantity }: Tongue): string {
  const lay = LAYS[field]
  if (!lay) return SOURCES[field] ?? ''
  const rate = (means: 'foot' | 'vehicle') => {
    const of = LAYING_RATES.find((each) => each.lay === lay && each.means === means)!
    return `${quantity(of.kmPerHour, 'kmPerHour')} with ${of.crew}: ${of.source}`
  }
  return `On foot ${rate('foot')} By vehicle ${rate('vehicle')}`
}
