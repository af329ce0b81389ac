import { describe, expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { weightNPerM } from '../../src/measure/ice-and-wind'
import { hotClearanceM, overheadSpans } from '../../src/measure/overhead-spans'

const fieldPair = BUILT_IN.wires.find(({ breakN = 0 }) => breakN > 850 && breakN < 950)!
const leg = {
  lengthM: 120,
  wire: { ...fieldPair, kgPerKm: 13.53, breakN: 890 },
  tempC: 49,
  sagPct: 2,
  supportM: 6,
  spanM: 30,
}
const legOver = (groundAt: (m: number) => number | undefined, change = {}) => {
  const result = overheadSpans({ ...leg, ...change }, groundAt)
  if (!result.ok) throw new Error(result.problems[0]!.message)
  return result.value
}

test('field wire of 48 lb a mile weighs 0.1327 N/m', () => {
  expect(weightNPerM(leg.wire)).toBeCloseTo(0.1327, 4)
})

describe('a level leg', () => {
  const level = legOver(() => 200)

  test('of 120 m has four spans of 30 m, each sagging 2 %', () => {
    expect(level.spans.map(({ startM, endM }) => [startM, endM])).toEqual([
      [0, 30],
      [30, 60],
      [60, 90],
      [90, 120],
    ])
    for (const { hanging } of level.spans) expect(hanging.sagM).toBeCloseTo(0.6, 6)
  })

  test('hangs lowest in mid-span, by its sag under its supports', () => {
    // At 49 °C already, the hottest day adds nothing: 6 m less 0.6 m.
    expect(hotClearanceM(level, 45)).toBeCloseTo(5.4, 6)
    expect(level.spans[1]!.lowest.clearanceM).toBeCloseTo(5.4, 6)
  })

  test('sags more in the heat than when it was strung, and pulls more in the cold', () => {
    const [cool] = legOver(() => 0, { tempC: 10 }).spans
    expect(cool!.hot.sagM).toBeGreaterThan(cool!.hanging.sagM)
    expect(cool!.coldTensionN).toBeGreaterThan(cool!.hanging.maxTensionN)
    expect(cool!.safetyFactor).toBeCloseTo(890 / cool!.coldTensionN, 9)
    expect(cool!.safetyFactor).toBeGreaterThan(4)
  })
})

test('over a hump the wire comes near the ground where the hump is', () => {
  const { spans } = legOver((m) => (m > 38 && m < 52 ? 4 : 0))
  const lowest = spans.map((span) => span.lowest).reduce((a, b) => (a.clearanceM < b.clearanceM ? a : b))
  expect(lowest.atM).toBeGreaterThan(38)
  expect(lowest.atM).toBeLessThan(52)
  expect(lowest.clearanceM).toBeCloseTo(1.4, 1)
})

test('between supports on a slope the wire follows the slope', () => {
  const slope = legOver((m) => 100 + 0.3 * m)
  expect(hotClearanceM(slope, 0)).toBeCloseTo(6, 6)
  expect(hotClearanceM(slope, 120)).toBeCloseTo(6, 5)
  expect(hotClearanceM(slope, 15)).toBeCloseTo(6 - 0.6, 2)
})

test('where the ground is not known the leg is taken as level', () => {
  expect(
    hotClearanceM(
      legOver(() => undefined),
      15,
    ),
  ).toBeCloseTo(5.4, 6)
})

test('a leg without sag is refused in a sentence', () => {
  expect(overheadSpans({ ...leg, sagPct: 0 }, () => 0).ok).toBe(false)
})
