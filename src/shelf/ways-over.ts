import type { Position } from '../geo/position'
import type { Hazard } from '../plan/plan'
import { leastMeeting } from '../route/least-meeting'
import { DEFAULT_ROUTE_WEIGHTS, type RouteWeights } from '../route/route-weights'
import { suggestRoute } from '../route/suggest-route'
import type { GridGround } from '../terrain/ground-from-grids'
import type { Terms } from './country'
import type { Shelf } from './shelf'
import { MOST_SOUGHT } from './ways'

/** What ways must go round, and what they pay for it; null where they are taken straight. */
export interface Going {
  readonly hazards: readonly Hazard[]
  readonly weights?: RouteWeights
}

/** A way is sought on so many cells: fine enough to go round a field, and done in a tenth of a second. */
const CELLS = 60_000

/**
 * The ways between places that cost least, and where three of them meet best, each sought once; nothing where nothing is known of the
 * ground, or the places are too many.
 */
export function termsOver(
  { places }: Shelf,
  { hazards, weights = DEFAULT_ROUTE_WEIGHTS }: Going,
  ground: GridGround | undefined,
): Terms {
  if (places.length > MOST_SOUGHT || (!ground && hazards.length === 0)) return { ground }
  return {
    ground,
    knownWays: remembered((from, to) => {
      const route = suggestRoute({ from, to, hazards, weights, mostCells: CELLS }, ground)
      return route?.ok ? route.value : undefined
    }),
    meeting: remembered((...three) => leastMeeting(three, { hazards, weights, mostCells: CELLS }, ground)),
  }
}

function remembered<P extends readonly Position[], T>(reckon: (...places: P) => T): (...places: P) => T {
  const known = new Map<string, T>()
  return (...places) => {
    const key = places.join(' ')
    if (!known.has(key)) known.set(key, reckon(...places))
    return known.get(key)!
  }
}
