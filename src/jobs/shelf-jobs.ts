import type { ElevationGrid } from '../terrain/elevation-grid'
import { knownGrids } from './known-grids'
import type { SHELF_JOBS } from './shelf-answers'
import { type WorkerClient, workerClient } from './worker-client'

/** A search goes on for some seconds between two words. */
const SILENCE_S = 180

/** Nets from a shelf, off the main thread, over the ground as it is known now. */
export function shelfJobs(ground: readonly ElevationGrid[]): WorkerClient<typeof SHELF_JOBS> {
  const grids = knownGrids()
  grids.set(ground)
  return workerClient<typeof SHELF_JOBS>({
    what: 'The search for nets',
    start: () => new Worker(new URL('./shelf-worker.ts', import.meta.url), { type: 'module' }),
    silenceS: SILENCE_S,
    prepare: (_, isNew) => grids.prepare(isNew),
  })
}
