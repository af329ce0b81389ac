import type { CIRCUIT_JOBS } from './circuit-answers'
import { type WorkerClient, workerClient } from './worker-client'

/** One circuit of some hundred sets is searched for a minute before its first word, s. */
const SILENCE_S = 300

/** Questions about circuits, off the main thread. */
export const circuitJobs = (what: string): WorkerClient<typeof CIRCUIT_JOBS> =>
  workerClient<typeof CIRCUIT_JOBS>({
    what,
    start: () => new Worker(new URL('./circuit-worker.ts', import.meta.url), { type: 'module' }),
    silenceS: SILENCE_S,
  })
