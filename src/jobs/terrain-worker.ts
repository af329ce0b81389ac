import { bytesFromBlob } from '../files/byte-source'
import { readElevationGrid } from '../files/elevation-files'
import { type NearRequest, nearRoutes } from '../route/near-routes'
import { type NetRequest, suggestNets } from '../route/suggest-nets'
import { type RouteRequest, suggestRoute } from '../route/suggest-route'
import type { ElevationGrid, Extent } from '../terrain/elevation-grid'
import { type GridGround, groundFromGrids } from '../terrain/ground-from-grids'
import { readyForGrids } from '../terrain/ready-grids'
import { type ReliefRequest, reliefOver } from '../terrain/relief'
import type { Tell } from './protocol'
import { serveJobs } from './serve-jobs'

let ground: GridGround | undefined

/** Parts are how far the work is, 0…1. */
const JOBS = {
  read: async ({ file, extent }: { file: File; extent: Extent | undefined }, tell: Tell<number>) => {
    const grid = await readElevationGrid(bytesFromBlob(file.name, file), extent, { onProgress: tell.part })
    // A grid may be a hundred megabytes.
    if (grid.ok && grid.value) tell.handOver(grid.value.heights.buffer)
    return grid
  },
  grids: async (grids: readonly ElevationGrid[]) => {
    await readyForGrids(grids)
    ground = grids.length > 0 ? groundFromGrids(grids) : undefined
  },
  /** Null where no ground is known. */
  relief: (request: ReliefRequest) => (ground ? reliefOver(ground, request) : null),
  route: (request: RouteRequest, tell: Tell<number>) =>
    suggestRoute(request, ground, { onProgress: tell.part })!,
  routes: (request: NearRequest, tell: Tell<number>) =>
    nearRoutes(request, ground, { onProgress: tell.part })!,
  nets: (request: NetRequest, tell: Tell<number>) => suggestNets(request, ground, { onProgress: tell.part })!,
}

export type TerrainTable = typeof JOBS

serveJobs(JOBS)
