import { DEFAULT_LAYING, type LayingAllowances } from '../catalog/laying-rates'
import { remembering } from '../memo'
import type { Plan } from '../plan/plan'
import { type Work, type WorkField, workOf } from '../plan/work'
import type { LoadAllowances } from './load-allowances'

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
      walkKmPerHour: of('walkKmPerHour'),
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
      testSetKg: of('testSetKg'),
      gearKg: {
        tag: of('tagKg'),
        rod: of('rodKg'),
        lance: of('lanceKg'),
        guy: of('guyKg'),
        stake: of('stakeKg'),
        weight: of('weightKg'),
      },
      reelPct: of('reelPct'),
    },
  }
}
