import { vi } from 'vitest'
import { answerCircuits, type CircuitQuestion } from '../../src/jobs/circuit-questions'

/** Lets the circuit worker work on this thread, as soon as it is asked; tells how many are at work. */
export function circuitWorkerHere() {
  const atWork = new Set<object>()
  vi.stubGlobal(
    'Worker',
    class {
      onmessage: (event: { data: unknown }) => void = () => undefined
      postMessage(question: CircuitQuestion) {
        atWork.add(this)
        answerCircuits(structuredClone(question), (answer) => {
          if (atWork.has(this)) this.onmessage({ data: structuredClone(answer) })
        })
      }
      terminate() {
        atWork.delete(this)
      }
    },
  )
  return atWork
}
