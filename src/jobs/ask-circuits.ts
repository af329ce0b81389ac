import type { CircuitAnswer, CircuitQuestion } from './circuit-questions'

/** How long the hand must be still before the work begins, ms. */
const STILL_MS = 250

/** Asks off the main thread, once the hand has been still. Returns how to give up. */
export function askWhenStill(
  question: () => CircuitQuestion,
  onAnswer: (answer: CircuitAnswer) => void,
): () => void {
  let worker: Worker | undefined
  const waiting = setTimeout(() => {
    worker = new Worker(new URL('./circuit-worker.ts', import.meta.url), { type: 'module' })
    worker.onmessage = ({ data }: MessageEvent<CircuitAnswer>) => onAnswer(data)
    worker.postMessage(question())
  }, STILL_MS)
  return () => {
    clearTimeout(waiting)
    worker?.terminate()
  }
}
