import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { followHand } from '../../src/state/follow-hand'

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] })
})
afterEach(() => {
  vi.useRealTimers()
})

/** Moves a hand once a frame for so long, ms; how often the figures followed. */
function moves(follow: (work: () => void) => void, forMs: number, tookMs: number): number {
  let count = 0
  const end = performance.now() + forMs
  while (performance.now() < end) {
    follow(() => {
      count++
      vi.advanceTimersByTime(tookMs)
    })
    vi.advanceTimersByTime(16)
  }
  return count
}

test('figures follow a moving hand: quick ones every other frame, slow ones a fifth of the time, and the last move always', () => {
  const quick = moves(followHand(), 1600, 0)
  expect(quick).toBeGreaterThanOrEqual(30)
  expect(quick).toBeLessThanOrEqual(50)
  const slow = moves(followHand(), 8000, 100)
  expect(slow).toBeGreaterThanOrEqual(12)
  expect(slow).toBeLessThanOrEqual(16)

  const follow = followHand()
  let shown = 0
  follow(() => {
    shown = 1
  })
  vi.advanceTimersByTime(1)
  expect(shown).toBe(1)
  for (const move of [2, 3])
    follow(() => {
      shown = move
    })
  expect(shown).toBe(1)
  vi.advanceTimersByTime(100)
  expect(shown).toBe(3)
})
