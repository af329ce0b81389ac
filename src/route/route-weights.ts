/** What a route pays for besides its length, in metres of easy ground. A person can change each of them. */
export interface RouteWeights {
  /** A metre of climb or of descent. */
  readonly climb: number
  /** Crossing what is drawn as a line, once. */
  readonly roadToll: number
  readonly trackToll: number
  readonly railwayToll: number
  readonly waterToll: number
  readonly powerToll: number
  /** Factor on a metre through water, on one near a power line, and on one beside a track or a road. */
  readonly waterPace: number
  readonly powerPace: number
  readonly besideTrackPace: number
}

/**
 * Climb: W. W. Naismith (1892) gives an hour to 3 miles and to 2000 ft of ascent, so 8 m of way to 1 m up; halved, for a crew
 * climbs only one way. Tolls: a buried track crossing takes 3 to 4 minutes and an overhead one 5 to 6 (Popular Science Monthly 90,
 * 1917, p. 820), at 2.5 km/h of laying. Railway, power line and paces: common practice.
 */
export const DEFAULT_ROUTE_WEIGHTS: RouteWeights = {
  climb: 4,
  roadToll: 230,
  trackToll: 150,
  railwayToll: 600,
  waterToll: 230,
  powerToll: 150,
  waterPace: 6,
  powerPace: 1.5,
  besideTrackPace: 0.8,
}

/** The verge along which a route follows a track or a road, and the strip by a power line that it keeps out of, m to each side. */
export const BESIDE_TRACK_M = 30
export const BY_POWER_M = 100
