import { type ContourLine, contourIntervalM, contourLines } from './contours'
import type { Extent } from './elevation-grid'
import type { GridGround } from './ground-from-grids'
import { hillShade } from './hill-shade'
import { mapPatch, patchStepM } from './map-patch'

/** A stretch of the map, and how many heights are taken across it and down. */
export interface ReliefRequest {
  readonly extent: Extent
  readonly columns: number
  readonly rows: number
  /** Contours stand at round figures of this unit, m: the metre or the foot. */
  readonly unitM: number
}

/** The ground as a map shows it. */
export interface Relief {
  readonly contours: readonly ContourLine[]
  /** Light on each point of the lattice, 1…255; 0 where the ground is not known. */
  readonly shade: Uint8Array
}

/** Contours and hill shading of a stretch of the map. */
export function reliefOver(ground: GridGround, { extent, columns, rows, unitM }: ReliefRequest): Relief {
  const patch = mapPatch(extent, columns, rows)
  const heightsM = ground.heightsOverM(patch)
  return {
    contours: contourLines(heightsM, patch, contourIntervalM(heightsM, unitM)),
    shade: hillShade(heightsM, columns, rows, patchStepM(patch)),
  }
}
