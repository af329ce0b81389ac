import type { SHELF_JOBS } from './shelf-answers'
import { type WorkerClient, workerClient } from './worker-client'

/** A search goes on for some seconds between two words. */
const SILENCE_S = 180

/** Nets from a shelf, off the main thread. */
export const shelfJobs = (): WorkerClient<typeof SHELF_JOBS> =>
  workerClient<typeof SHELF_JOBS>({
    what: 'The search for nets',
    start: () => new Worker(new URL('./shelf-worker.ts', import.meta.url), { type: 'module' }),
    silenceS: SILENCE_S,
  })
