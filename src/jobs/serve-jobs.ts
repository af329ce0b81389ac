import type { Ask, Door, JobTable, Reply } from './protocol'
import { whyOf } from './protocol'

/** Answers what the page asks, in a worker: whatever a job throws, at once or later, goes back as a failure. */
export function serveJobs(jobs: JobTable, door: Door = self as unknown as Door): void {
  let underWay = 0
  const send = (reply: Reply, transfer: Transferable[] = []) => door.postMessage(reply, transfer)

  door.addEventListener('message', async (event) => {
    const { job, kind, question } = (event as MessageEvent<Ask>).data
    underWay = job
    const handedOver: Transferable[] = []
    try {
      const answer = await jobs[kind]!(question as never, {
        part: (part) => send({ job, is: 'part', part }),
        handOver: (memory) => handedOver.push(memory as Transferable),
      })
      send({ job, is: 'done', answer }, handedOver)
    } catch (error) {
      send({ job, is: 'failed', why: whyOf(error) })
    }
  })
  // A promise that a job forgot to await: its job may never end.
  door.addEventListener('unhandledrejection', (event) => {
    send({ job: underWay, is: 'failed', why: whyOf((event as PromiseRejectionEvent).reason) })
  })
}
