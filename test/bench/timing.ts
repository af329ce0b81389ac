/** What a row is held to. Times hang on the machine, so that only the others can fail a check. */
export interface Goal {
  readonly text: string
  readonly met: boolean
  readonly kind: 'time' | 'ratio' | 'growth' | 'count'
}

/** What `npm run bench` prints: one thing done, what it comes to, and what that is held against. */
export interface BenchRow {
  readonly what: string
  /** How long a processor works for it, or, in a browser, how long it takes; absent where the row is of something else than time. */
  readonly ms?: number
  /** What else was measured, in words. */
  readonly figures?: string
  /** The same work by another hand, or done without what was saved, measured in the same run. */
  readonly against?: readonly { readonly by: string; readonly ms: number }[]
  readonly goals?: readonly Goal[]
}

/** A stretch of runs that is timed as one, ms: the clock of processors counts in steps of its own, and one run may be shorter. */
const STRETCH_MS = 10
const STRETCHES = 25
/** Code that has run seldom is not compiled yet: it takes up to eight times as long, and what compiles it works beside it. Each run has so long before it counts, ms. */
const WARM_MS = 1500

/** Milliseconds that processors have worked for this program, its collecting of rubbish too: what else the machine does is not in it. */
const workedMs = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

/** Median work of one run, ms. */
export const medianMs = async (run: () => unknown): Promise<number> => (await sideBySide(run))[0]!

/**
 * Median work of one run of each, ms. Their stretches take turns: a processor that is shared works slower, and so it does for all of
 * them, so that their ratio is one of the same minutes.
 */
export async function sideBySide(...runs: readonly (() => unknown)[]): Promise<readonly number[]> {
  const counts = await Promise.all(runs.map(() => 0))
  for (const [k, run] of runs.entries()) {
    await forAWhile(run, WARM_MS)
    counts[k] = await forAWhile(run, STRETCH_MS)
  }
  const taken = runs.map((): number[] => [])
  for (let stretch = 0; stretch < STRETCHES; stretch++)
    for (const [k, run] of runs.entries()) {
      const count = counts[k]!
      const before = workedMs()
      for (let i = 0; i < count; i++) await run()
      taken[k]!.push((workedMs() - before) / count)
    }
  return taken.map(median)
}

/** Runs once at least, and again until so long has gone by; gives how often. */
async function forAWhile(run: () => unknown, ms: number): Promise<number> {
  const start = performance.now()
  let count = 0
  do {
    await run()
    count++
  } while (performance.now() - start < ms)
  return count
}

/** Work of one run on the whole, the first so many times that it is done, ms. */
export function meanOfFirst(times: number, run: () => unknown): number {
  const before = workedMs()
  for (let k = 0; k < times; k++) run()
  return (workedMs() - before) / times
}

/** Median work of the second step alone, ms. */
export async function medianWithout<T>(
  prepare: () => T,
  run: (prepared: T) => unknown,
  times = 60,
): Promise<number> {
  await forAWhile(() => run(prepare()), WARM_MS)
  const taken: number[] = []
  for (let k = 0; k < times; k++) {
    const prepared = prepare()
    const before = workedMs()
    await run(prepared)
    taken.push(workedMs() - before)
  }
  return median(taken)
}

export const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!
