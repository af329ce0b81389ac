import { DEFAULT_LAYING, LAYING_RATES, LAYING_SOURCES, type LayingAllowances } from '../catalog/laying-rates'
import { TAGGING_SOURCE } from '../measure/line-tags'
import { remembering } from '../memo'
import type { Lay, Plan } from '../plan/plan'
import { type Work, type WorkField, workOf } from '../plan/work'
import { LOAD_SOURCES, type LoadAllowances } from './loads'

const rateSource = (lay: Lay): string => {
  const of = (means: 'foot' | 'vehicle') =>
    LAYING_RATES.find((rate) => rate.lay === lay && rate.means === means)!
  const [foot, vehicle] = [of('foot'), of('vehicle')]
  return `On foot ${foot.kmPerHour} km/h with ${foot.crew}: ${foot.source} By vehicle ${vehicle.kmPerHour} km/h with ${vehicle.crew}: ${vehicle.source}`
}

/** Where the usual figures of the work come from, as far as hours, loads and tags follow from them. */
export const WORK_SOURCES: Readonly<Partial<Record<WorkField, string>>> = {
  peoplePerCrew: LAYING_SOURCES.people,
  nightFactor: LAYING_SOURCES.nightFactor,
  surfaceKmPerHour: rateSource('surface'),
  overheadKmPerHour: rateSource('overhead'),
  buriedKmPerHour: rateSource('buried'),
  waterKmPerHour: rateSource('water'),
  recoveryKmPerHour: LAYING_SOURCES.recoveryKmPerHour,
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
  reelPct: LOAD_SOURCES.reelPct,
  testEveryM: TAGGING_SOURCE,
  tagEveryM: TAGGING_SOURCE,
}

interface Allowed {
  readonly laying: LayingAllowances
  readonly loads: LoadAllowances
}

const remembered = remembering((work: Work | undefined): Allowed => allowed(work ? { work } : {}))

/** What the hours of a plan follow from: the same object as long as its figures of the work stay. */
export const layingOf = (plan: Plan): LayingAllowances => remembered(plan.work).laying

/** What the load list of a plan follows from. */
export const loadAllowancesOf = (plan: Plan): LoadAllowances => remembered(plan.work).loads

function allowed(plan: { readonly work?: Work }): Allowed {
  const of = (field: WorkField) => workOf(plan, field)
  const { means, rates } = DEFAULT_LAYING.foot
  return {
    laying: {
      means,
      crews: of('crews'),
      people: of('peoplePerCrew'),
      rates: {
        surface: { kmPerHour: of('surfaceKmPerHour'), crew: rates.surface.crew },
        overhead: { kmPerHour: of('overheadKmPerHour'), crew: rates.overhead.crew },
        buried: { kmPerHour: of('buriedKmPerHour'), crew: rates.buried.crew },
        water: { kmPerHour: of('waterKmPerHour'), crew: rates.water.crew },
      },
      recoveryKmPerHour: of('recoveryKmPerHour'),
      climbMPerHour: of('climbMPerHour'),
      buriedCrossingMin: of('buriedCrossingMin'),
      overheadCrossingMin: of('overheadCrossingMin'),
      railwayCrossingMin: of('railwayCrossingMin'),
      spliceMin: of('spliceMin'),
      stationMin: of('stationMin'),
      isNight: of('night') === 1,
      nightFactor: of('nightFactor'),
    },
    loads: {
      perPersonKg: of('personLimitKg'),
      people: of('crews') * of('peoplePerCrew'),
      crews: of('crews'),
      setKg: of('setKg'),
      cellsPerSet: of('cellsPerSet'),
      cellKg: of('cellKg'),
      supplyKg: of('supplyKg'),
      spareBatteriesPct: of('spareBatteriesPct'),
      toolsKg: of('toolsKg'),
      reelPct: of('reelPct'),
    },
  }
}
