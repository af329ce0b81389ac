import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fewestBins } from '../../src/materials/bin-bound'

test.each([
  [[0.51, 0.51, 0.51], 3],
  [new Array(175).fill(0.3), 59],
  [new Array(10).fill(0.34), 5],
  [[0.5, 0.5, 0.25, 0.25, 0.25, 0.25], 2],
])('of %j of a bin no fewer than %i bins are claimed', (sizes, bins) => {
  expect(fewestBins(sizes, 1)).toBe(bins)
})

test('never more bins are claimed than a packing of the same items fills', () => {
  const sizes = fc.array(fc.double({ min: 0.02, max: 1, noNaN: true }), { minLength: 1, maxLength: 14 })
  fc.assert(fc.property(sizes, (items) => fewestBins(items, 1) <= fewestByTrying(items)))
})

/** The fewest bins by putting each item into every bin in turn. */
function fewestByTrying(items: readonly number[]): number {
  const order = items.toSorted((a, b) => b - a)
  const rest: number[] = []
  let best = order.length
  let steps = 0
  const put = (i: number): void => {
    if (rest.length >= best || ++steps > 20_000) return
    if (i === order.length) {
      best = rest.length
      return
    }
    for (const [bin, room] of rest.entries()) {
      if (room < order[i]! - 1e-9) continue
      rest[bin] = room - order[i]!
      put(i + 1)
      rest[bin] = room
    }
    rest.push(1 - order[i]!)
    put(i + 1)
    rest.pop()
  }
  put(0)
  return best
}
