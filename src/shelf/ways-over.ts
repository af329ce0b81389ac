import type { Hazard } from '../plan/plan'
import { DEFAULT_ROUTE_WEIGHTS, type RouteWeights } from '../route/route-weights'
import { suggestRoute } from '../route/suggest-route'
import type { GridGround } from '../terrain/ground-from-grids'
import type { KnownWays } from './country'
import type { Shelf } from './shelf'
import { MOST_SOUGHT } from './ways'

/** What ways must go round, and what they pay for it; null where they are taken straight. */
export interface Going {
  readonly hazards: readonly Hazard[]
  readonly weights?: RouteWeights
}

/** A way is sought on so many cells: fine enough to go round a field, and done in a tenth of a second. */
const CELLS = 60_000

/** The way between each two places that costs least, sought once; undefined where nothing is known of the ground, or the places are too many. */
export function waysOver(
  { places }: Shelf,
  { hazards, weights = DEFAULT_ROUTE_WEIGHTS }: Going,
  ground: GridGround | undefined,
): KnownWays | undefined {
  if (places.length > MOST_SOUGHT || (!ground && hazards.length === 0)) return undefined
  const known = new Map<string, ReturnType<KnownWays>>()
  return (a, b) => {
    const [from, to] = [places[a]!.position, places[b]!.position]
    if (!from || !to) return undefined
    const key = `${a} ${b}`
    if (!known.has(key)) {
      const route = suggestRoute({ from, to, hazards, weights, mostCells: CELLS }, ground)
      known.set(key, route?.ok ? route.value : undefined)
    }
    return known.get(key)
  }
}
