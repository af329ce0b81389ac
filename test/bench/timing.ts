/** What a row is held to. Times hang on the machine, so that only the others can fail a check. */
export interface Goal {
  readonly text: string
  readonly met: boolean
  readonly kind: 'time' | 'ratio' | 'growth' | 'count'
}

/** What `npm run bench` prints: one thing done, what it comes to, and what that is held against. */
export interface BenchRow {
  readonly what: string
  /** How long it takes; absent where the row is of something else than time. */
  readonly ms?: number
  /** What else was measured, in words. */
  readonly figures?: string
  /** The same work by another hand, or done without what was saved, measured in the same run. */
  readonly against?: readonly { readonly by: string; readonly ms: number }[]
  readonly goals?: readonly Goal[]
}

/** Median time of one run, ms, over at least five runs and about half a second. */
export const medianMs = async (run: () => unknown, forMs = 500): Promise<number> =>
  (await timesOf(run, forMs)).medianMs

/** The same with the fastest tenth, which company on the machine disturbs least. */
export async function timesOf(
  run: () => unknown,
  forMs = 500,
): Promise<{ readonly medianMs: number; readonly fastMs: number }> {
  await run()
  const times: number[] = []
  const end = performance.now() + forMs
  while (times.length < 5 || performance.now() < end) {
    const start = performance.now()
    await run()
    times.push(performance.now() - start)
  }
  const sorted = times.toSorted((a, b) => a - b)
  return { medianMs: median(times), fastMs: sorted[Math.floor(sorted.length / 10)]! }
}

/** Median time of the second step alone, ms. */
export async function medianWithout<T>(
  prepare: () => T,
  run: (prepared: T) => unknown,
  times = 60,
): Promise<number> {
  const taken: number[] = []
  for (let k = 0; k < times; k++) {
    const prepared = prepare()
    const start = performance.now()
    await run(prepared)
    taken.push(performance.now() - start)
  }
  return median(taken)
}

export const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!
