import { vi } from 'vitest'
import { CIRCUIT_JOBS } from '../../src/jobs/circuit-answers'
import type { JobTable } from '../../src/jobs/protocol'
import { serveJobs } from '../../src/jobs/serve-jobs'

/** A worker that works on this thread: what passes between it and the page is copied, as between threads. */
export class WorkerHere extends EventTarget {
  readonly asked: string[] = []
  ended = false
  private readonly door = new EventTarget()

  constructor(jobs: JobTable) {
    super()
    const postMessage = (reply: unknown, transfer: Transferable[]) => {
      const data = structuredClone(reply, { transfer })
      if (!this.ended) this.dispatchEvent(new MessageEvent('message', { data }))
    }
    serveJobs(jobs, Object.assign(this.door, { postMessage }))
  }
  postMessage(ask: { readonly kind: string }): void {
    this.asked.push(ask.kind)
    this.door.dispatchEvent(new MessageEvent('message', { data: structuredClone(ask) }))
  }
  terminate(): void {
    this.ended = true
  }
  /** As the browser tells of a script that could not be fetched or run. */
  break(message: string): void {
    this.dispatchEvent(Object.assign(new Event('error'), { message }))
  }
  /** As the browser tells, in the worker, of a promise that nobody awaited. */
  dropPromise(reason: unknown): void {
    this.door.dispatchEvent(Object.assign(new Event('unhandledrejection'), { reason }))
  }
}

/** Starts workers on this thread, and notes them. */
export function workersHere(jobs: JobTable) {
  const workers: WorkerHere[] = []
  const start = () => {
    workers.push(new WorkerHere(jobs))
    return workers.at(-1) as unknown as Worker
  }
  return { workers, start }
}

/** Lets the circuit worker work on this thread; tells how many are at work. */
export function circuitWorkerHere(jobs: JobTable = CIRCUIT_JOBS) {
  const { workers, start } = workersHere(jobs)
  vi.stubGlobal('Worker', function Worker() {
    return start()
  })
  return { atWork: () => workers.filter(({ ended }) => !ended).length }
}
