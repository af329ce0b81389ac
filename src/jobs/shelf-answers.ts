import { circuitModel } from '../budget/circuit-model'
import { conditionsOf } from '../budget/conditions'
import { oddsOf } from '../budget/odds'
import { BUILT_IN } from '../catalog/built-in'
import { mergeCatalogs } from '../catalog/catalog'
import { measurePlan } from '../measure/measure-line'
import type { Plan } from '../plan/plan'
import { reportPlan } from '../report/report-plan'
import type { LaidNet } from '../shelf/best-so-far'
import { countryOf } from '../shelf/country'
import type { Shelf } from '../shelf/shelf'
import { plannedNet, shelfAnswer } from '../shelf/shelf-answer'
import { type Going, termsOver } from '../shelf/ways-over'
import type { ElevationGrid } from '../terrain/elevation-grid'
import { type GridGround, groundFromGrids } from '../terrain/ground-from-grids'
import { readyForGrids } from '../terrain/ready-grids'
import { answerInWords, netInWords } from '../words/json-shelf'
import type { UnitSystem } from '../words/units'
import type { Tell } from './protocol'

/** A net as a page shows it. */
export type ShownNet = ReturnType<typeof netInWords<Plan>>

/** How far a search is, and the best nets so far; then what each takes besides. */
export type ShelfNews =
  | { readonly kind: 'so-far'; readonly share: number; readonly nets: readonly ShownNet[] }
  | { readonly kind: 'burden'; readonly net: number; readonly burden: Burden }

/** What a net takes besides wire, and how sure it is. */
export interface Burden {
  readonly kg: number
  readonly hours: number
  /** Of a hundred such nets so many work, today and in the worst weather: the least of its circuits. */
  readonly today: number
  readonly worst: number
}

/** Between two words of how the search goes, ms. */
const PAUSE_MS = 200
/** Circuits drawn for the odds of one: enough for ± 5 in a hundred. */
const SAMPLES = { samples: 400, seed: 1 }

let ground: GridGround | undefined

/** What is asked of a shelf. */
export const SHELF_JOBS = {
  grids: async (grids: readonly ElevationGrid[]) => {
    await readyForGrids(grids)
    ground = grids.length > 0 ? groundFromGrids(grids) : undefined
  },
  nets: (
    {
      shelf,
      system,
      going,
    }: { readonly shelf: Shelf; readonly system: UnitSystem; readonly going: Going | null },
    tell: Tell<ShelfNews>,
  ) => {
    const plain = (plan: Plan) => plan
    const terms = going ? termsOver(shelf, going, ground) : {}
    const country = countryOf(shelf, terms)
    let told = Number.NEGATIVE_INFINITY
    const onBetter = (listed: () => readonly LaidNet[], share: number) => {
      if (performance.now() < told + PAUSE_MS) return
      const nets = listed().map((net) =>
        netInWords(plannedNet(country, net, terms.ground), country, plain, system),
      )
      tell.part({ kind: 'so-far', share, nets })
      told = performance.now()
    }
    return answerInWords(shelfAnswer(shelf, terms, { onBetter }), plain, system)
  },
  burdens: ({ plans }: { readonly plans: readonly Plan[] }, tell: Tell<ShelfNews>): void => {
    for (const [net, plan] of plans.entries()) tell.part({ kind: 'burden', net, burden: burdenOf(plan) })
  },
}

function burdenOf(plan: Plan): Burden {
  const { loads, hours } = reportPlan(plan, ground)
  const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
  const measured = measurePlan(plan, ground)
  const odds = [...plan.circuits.values()].map((circuit) =>
    oddsOf(
      circuitModel(plan, circuit, catalog, measured),
      conditionsOf(plan.weather, plan.wireTempC),
      SAMPLES,
    ),
  )
  return {
    kg: loads.totalKg,
    hours: hours.totalH,
    today: Math.min(...odds.map(({ today }) => today.works)),
    worst: Math.min(...odds.map(({ worst }) => worst.works)),
  }
}
