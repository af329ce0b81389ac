/** What `npm run bench` prints: one thing done, how long it takes, and what that is held against. */
export interface BenchRow {
  readonly what: string
  readonly ms: number
  /** The same work by another hand, measured in the same run. */
  readonly against?: readonly { readonly by: string; readonly ms: number }[]
  /** A goal that the row is held to. */
  readonly goal?: { readonly text: string; readonly met: boolean }
}

/** Median time of one run, ms, over at least five runs and about half a second. */
export async function medianMs(run: () => unknown, forMs = 500): Promise<number> {
  await run()
  const times: number[] = []
  const end = performance.now() + forMs
  while (times.length < 5 || performance.now() < end) {
    const start = performance.now()
    await run()
    times.push(performance.now() - start)
  }
  return median(times)
}

export const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!
