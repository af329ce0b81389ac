/** The hand has the page to itself so long after all figures were worked out, ms, and so many times as long as that took. */
const LEAST_MS = 30
const TIMES = 4
/** Two frames: a hand that moves has moved again by then, ms. */
const RESTS_MS = 34

/**
 * Lets the figures follow a hand: after the frame that shows where it is, and at most for a fifth of the time. Nobody reads figures sixty
 * times a second, but everybody feels when a thing lags behind the hand that moves it.
 */
export function followHand(): (work: () => void) => void {
  let timer: ReturnType<typeof setTimeout> | undefined
  let readyAt = 0
  return (work) => {
    clearTimeout(timer)
    const waitMs = readyAt - performance.now()
    timer = setTimeout(
      () => {
        const start = performance.now()
        work()
        const end = performance.now()
        readyAt = end + Math.max(LEAST_MS, TIMES * (end - start))
      },
      // A move to come asks again; this is for the last one.
      waitMs > 0 ? waitMs + RESTS_MS : 0,
    )
  }
}
