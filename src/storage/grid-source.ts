import { datumShiftOf } from '../geo/datum-shift'
import type { Position } from '../geo/position'
import type { Watch } from '../jobs/terrain-jobs'
import type { Result } from '../problem'
import type { ElevationGrid, Extent } from '../terrain/elevation-grid'
import { cellSizeM, extentOf } from '../terrain/grid-extent'
import type { KeptGrid } from '../terrain/kept-grid'

/** Whatever elevations can be read from, a window at a time. */
export interface GridSource {
  readonly key: string
  readonly name: string
  readonly isKept: boolean
  readonly sizeBytes: () => number
  /** Without an extent, all of it. Undefined where the reading was stopped. */
  readonly read: (
    extent: Extent | undefined,
    watch: Watch,
  ) => Promise<Result<ElevationGrid | null> | undefined>
}

/** A source and what of it was read last. */
export interface ReadSource {
  readonly source: GridSource
  readonly grid: ElevationGrid | null
  /** What was asked for; null before anything was, and where all was asked for. */
  readonly extent: Extent | null
  readonly state: KeptGrid['state']
}

/** A plan that grows has room to grow in before a source is read again: so much of its size on each side. */
const ROOM = 0.4

/** Routes leave the straight way: more is read than the plan covers. */
export function withRoom({ westDeg, southDeg, eastDeg, northDeg }: Extent): Extent {
  const lonDeg = (eastDeg - westDeg) * ROOM
  const latDeg = (northDeg - southDeg) * ROOM
  return {
    westDeg: westDeg - lonDeg,
    southDeg: Math.max(-90, southDeg - latDeg),
    eastDeg: eastDeg + lonDeg,
    northDeg: Math.min(90, northDeg + latDeg),
  }
}

export const covers = (outer: Extent, inner: Extent): boolean =>
  outer.westDeg <= inner.westDeg &&
  outer.southDeg <= inner.southDeg &&
  outer.eastDeg >= inner.eastDeg &&
  outer.northDeg >= inner.northDeg

/** Reads what a plan needs of a source. A file too large to be read whole waits for a plan to be read under. */
export async function readSource(
  source: GridSource,
  planned: Extent | undefined,
  watch: Watch,
): Promise<Result<ReadSource> | undefined> {
  const extent = planned ? withRoom(planned) : null
  const result = await source.read(extent ?? undefined, watch)
  if (!result) return undefined
  if (result.ok) {
    const state = result.value ? 'read' : extent ? 'elsewhere' : 'waiting'
    return { ok: true, value: { source, grid: result.value, extent, state } }
  }
  const isTooLarge = !extent && result.problems.every(({ code }) => code === 'too-many-cells')
  return isTooLarge ? { ok: true, value: { source, grid: null, extent, state: 'waiting' } } : result
}

export const middleOf = ({ westDeg, southDeg, eastDeg, northDeg }: Extent): Position => [
  (westDeg + eastDeg) / 2,
  (southDeg + northDeg) / 2,
]

/** A source as the list of elevations shows it. */
export function entryOf({ source, grid, state }: ReadSource): KeptGrid {
  const extent = grid && extentOf(grid)
  return {
    key: source.key,
    name: source.name,
    sizeBytes: source.sizeBytes(),
    cellM: grid && extent ? cellSizeM(grid, extent) : undefined,
    middle: extent ? middleOf(extent) : undefined,
    shift: grid ? datumShiftOf(grid.crs) : undefined,
    state,
    isKept: source.isKept,
  }
}
