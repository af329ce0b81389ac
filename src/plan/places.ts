import type { Position } from '../geo/position'

/** What a file of another program holds that a plan can take: named points, and ways through points. */
export interface Places {
  readonly points: readonly NamedPoint[]
  readonly paths: readonly NamedPath[]
}

export interface NamedPoint {
  readonly name: string
  readonly note: string
  /** What the file has put it under: a folder, waypoints, tracks. Empty for nothing. */
  readonly layer: string
  readonly position: Position
}

export interface NamedPath {
  readonly name: string
  readonly note: string
  readonly layer: string
  /** Two at least. */
  readonly positions: readonly Position[]
}
