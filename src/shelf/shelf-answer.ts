import type { Verdict } from '../budget/rows'
import type { Plan } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import type { LaidNet } from './best-so-far'
import { type Country, countryOf, type Terms } from './country'
import { findNets, type Search, type Searching } from './find-nets'
import { judgedInDrySoil, type Verdicts } from './judge-net'
import { type Gain, gainsOf, lackingOf, type Want, withThing } from './lacking'
import { netPlan } from './net-plan'
import { isGood } from './rank-nets'
import type { Shelf } from './shelf'

/** A net with its plan. */
export interface PlannedNet extends LaidNet {
  readonly plan: Plan
  /** How it stands where the soil about its earth rods is at its driest; null where it has none. */
  readonly inDrySoil: { readonly verdict: Verdict; readonly worst: Verdict } | null
}

export const plannedNet = (country: Country, net: LaidNet, ground?: Ground): PlannedNet => ({
  ...net,
  plan: netPlan(country, net.design, ground),
  inDrySoil: net.earthed > 0 ? judgedInDrySoil(country, net.design) : null,
})

/** What can be made of a shelf, the best first; and where nothing can, what is lacking. */
export interface ShelfAnswer {
  readonly country: Country
  readonly nets: readonly PlannedNet[]
  readonly wants: readonly Want[]
  readonly gains: readonly Gain[]
  readonly search: Search
}

/**
 * Nets that can be made of a shelf with their plans; what one thing more would bring; and where none works the nearest misses and what
 * the shelf lacks.
 */
export function shelfAnswer(shelf: Shelf, terms: Terms = {}, searching: Searching = {}): ShelfAnswer {
  const country = countryOf(shelf, terms)
  const known: Verdicts = new Map()
  const { nets, search } = findNets(country, searching, { known })
  const [best] = nets
  const countryWith = (thing: Parameters<typeof withThing>[1]) => countryOf(withThing(shelf, thing), terms)
  const gains = gainsOf(country, best, countryWith, { ...searching, known })
  const works = best !== undefined && isGood(best)
  return {
    country,
    nets: nets.map((net) => plannedNet(country, net, terms.ground)),
    wants: works ? [] : lackingOf(country, nets, gains, countryWith),
    gains: works ? gains : [],
    search,
  }
}
