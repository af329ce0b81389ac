import type { CODE_JOBS } from './code-reading'
import { type WorkerClient, workerClient } from './worker-client'

const SILENCE_S = 30

/** Reading codes off pictures, off the main thread. */
export const codeJobs = (): WorkerClient<typeof CODE_JOBS> =>
  workerClient<typeof CODE_JOBS>({
    what: 'Reading the codes',
    start: () => new Worker(new URL('./code-worker.ts', import.meta.url), { type: 'module' }),
    silenceS: SILENCE_S,
  })
