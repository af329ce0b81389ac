import type { Plan } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import type { LaidNet } from './best-so-far'
import { type Country, countryOf, type KnownWays } from './country'
import { findNets, type Search, type Searching } from './find-nets'
import { type Gain, gainsOf, lackingOf, type Want, withThing } from './lacking'
import { netPlan } from './net-plan'
import { isGood } from './rank-nets'
import type { Shelf } from './shelf'

/** A net with its plan. */
export interface PlannedNet extends LaidNet {
  readonly plan: Plan
}

/** What can be made of a shelf, the best first; and where nothing can, what is lacking. */
export interface ShelfAnswer {
  readonly country: Country
  readonly nets: readonly PlannedNet[]
  readonly wants: readonly Want[]
  readonly gains: readonly Gain[]
  readonly search: Search
}

/** Where wire may go, and how high it is there, as far as that is known. */
export interface Terms {
  readonly knownWays?: KnownWays | undefined
  readonly ground?: Ground | undefined
}

/**
 * Nets that can be made of a shelf with their plans; what one thing more would bring; and where none works the nearest misses and what
 * the shelf lacks.
 */
export function shelfAnswer(
  shelf: Shelf,
  { knownWays, ground }: Terms = {},
  searching: Searching = {},
): ShelfAnswer {
  const country = countryOf(shelf, knownWays, ground)
  const { nets, search } = findNets(country, searching)
  const [best] = nets
  const countryWith = (thing: Parameters<typeof withThing>[1]) =>
    countryOf(withThing(shelf, thing), knownWays, ground)
  const gains = gainsOf(country, best, countryWith, searching.isStopped)
  const works = best !== undefined && isGood(best)
  return {
    country,
    nets: nets.map((net) => ({ ...net, plan: netPlan(country, net.design, ground) })),
    wants: works ? [] : lackingOf(country, nets, gains, countryWith),
    gains: works ? gains : [],
    search,
  }
}
