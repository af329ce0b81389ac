import { HAZARDS } from '../hazard/kinds'
import { HAZARD_KINDS } from '../plan/hazard-schema'
import type { HazardKind } from '../plan/plan'

/** What of each kind of hazard a route pays for: see `RouteRule`. */
export type RoutePrices = Readonly<Partial<Record<HazardKind, number>>>

/** What a route pays for besides its length, in metres of easy ground. A person can change each of them. */
export interface RouteWeights {
  /** A metre of climb or of descent. */
  readonly climb: number
  /** Crossing what is drawn as a line, once. */
  readonly toll: RoutePrices
  /** Factor on a metre inside an area, and on one near a hazard. */
  readonly inside: RoutePrices
  readonly near: RoutePrices
}

const usual = (price: 'toll' | 'inside' | 'near'): RoutePrices =>
  Object.fromEntries(
    HAZARD_KINDS.flatMap((kind) => {
      const rule = HAZARDS[kind].route[price]
      return rule ? [[kind, rule.usual]] : []
    }),
  )

/**
 * Climb: W. W. Naismith (1892) gives an hour to 3 miles and to 2000 ft of ascent, so 8 m of way to 1 m up; halved, for a crew
 * climbs only one way. What each kind of hazard costs stands in its entry.
 */
export const DEFAULT_ROUTE_WEIGHTS: RouteWeights = {
  climb: 4,
  toll: usual('toll'),
  inside: usual('inside'),
  near: usual('near'),
}
