/// <reference lib="webworker" />
import { bytesFromBlob } from '../files/byte-source'
import { readElevationGrid } from '../files/elevation-files'
import type { Result } from '../problem'
import { type NetRequest, type SuggestedNet, suggestNets } from '../route/suggest-nets'
import { type RouteRequest, type SuggestedRoute, suggestRoute } from '../route/suggest-route'
import type { ElevationGrid, Extent } from '../terrain/elevation-grid'
import { type GridGround, groundFromGrids } from '../terrain/ground-from-grids'
import { type Relief, type ReliefRequest, reliefOver } from '../terrain/relief'

/** What the page asks of the worker; `job` comes back with every answer. */
export type TerrainTask =
  | { readonly job: number; readonly kind: 'read'; readonly file: File; readonly extent: Extent | undefined }
  | { readonly job: number; readonly kind: 'grids'; readonly grids: readonly ElevationGrid[] }
  | { readonly job: number; readonly kind: 'relief'; readonly request: ReliefRequest }
  | { readonly job: number; readonly kind: 'route'; readonly request: RouteRequest }
  | { readonly job: number; readonly kind: 'nets'; readonly request: NetRequest }

/** What the worker answers. It has no ear while it works: the page stops it by ending it. */
export type TerrainAnswer =
  | { readonly job: number; readonly done: number }
  | { readonly job: number; readonly grid: Result<ElevationGrid | null> }
  | { readonly job: number; readonly kept: true }
  /** Null where no ground is known. */
  | { readonly job: number; readonly relief: Relief | null }
  | { readonly job: number; readonly route: Result<SuggestedRoute> }
  | { readonly job: number; readonly nets: Result<SuggestedNet[]> }

declare const self: DedicatedWorkerGlobalScope

let ground: GridGround | undefined

self.onmessage = async ({ data: task }: MessageEvent<TerrainTask>) => {
  const { job } = task
  const answer = (message: TerrainAnswer, transfer: Transferable[] = []) =>
    self.postMessage(message, transfer)
  const onProgress = (done: number) => answer({ job, done })
  switch (task.kind) {
    case 'read': {
      const { file, extent } = task
      const grid = await readElevationGrid(bytesFromBlob(file.name, file), extent, { onProgress })
      // Handed over, not copied: a grid may be a hundred megabytes.
      answer({ job, grid }, grid.ok && grid.value ? [grid.value.heights.buffer as ArrayBuffer] : [])
      break
    }
    case 'grids':
      ground = task.grids.length > 0 ? groundFromGrids(task.grids) : undefined
      answer({ job, kept: true })
      break
    case 'relief':
      answer({ job, relief: ground ? reliefOver(ground, task.request) : null })
      break
    case 'route':
      answer({ job, route: suggestRoute(task.request, ground, { onProgress })! })
      break
    case 'nets':
      answer({ job, nets: suggestNets(task.request, ground, { onProgress })! })
      break
  }
}
