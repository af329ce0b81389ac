/** How long the hand must be still before the work begins, ms. */
const STILL_MS = 250

/** Begins long work once the hand has been still. Returns how to give it up. */
export function whenStill(work: (signal: AbortSignal) => Promise<void>): () => void {
  const stopper = new AbortController()
  const waiting = setTimeout(() => void work(stopper.signal), STILL_MS)
  return () => {
    clearTimeout(waiting)
    stopper.abort()
  }
}
