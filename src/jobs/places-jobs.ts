import type { PLACES_JOBS } from './places-reading'
import { type WorkerClient, workerClient } from './worker-client'

/** A file at its largest is read in a second; what takes longer is a trap. */
const SILENCE_S = 10

/** Reading files of other programs, off the main thread. */
export const placesJobs = (): WorkerClient<typeof PLACES_JOBS> =>
  workerClient<typeof PLACES_JOBS>({
    what: 'Reading the file',
    start: () => new Worker(new URL('./places-worker.ts', import.meta.url), { type: 'module' }),
    silenceS: SILENCE_S,
  })
