import { describe, expect, test } from 'vitest'
import { seededNormal } from '../../src/budget/seeded'
import { measurePlan } from '../../src/measure/measure-line'
import type { Plan } from '../../src/plan/plan'
import { learnedOf } from '../../src/report/learned-of'
import { reportPlan } from '../../src/report/report-plan'
import { fieldPlan, TEST_WIRE } from './field-plan'

const LINES = [
  { id: 'l1', from: 'a', to: 'b', wireM: 2000 },
  { id: 'l2', from: 'b', to: 'c', wireM: 3000 },
]
const spread = (figures: object) => [{ ...TEST_WIRE, spread: figures }]
const reading = (id: string, value: number, more: object = {}) => ({
  ...{ id, line: 'l1', kind: 'reading', wireM: 2000, toward: 'from', far: 'short', what: 'loopOhms' },
  ...{ value, meterPct: 1, tempC: 20 },
  ...more,
})
const planWith = (field: readonly object[], wires: readonly object[] = spread({ loopOhmPerKm: 8 })): Plan =>
  fieldPlan(LINES, { field, wires })
const fieldOf = (plan: Plan, line = 'l1') => reportPlan(plan).lines.find(({ id }) => id === line)!.field

const sigma = (pct: number) => Math.log(1 + pct / 100) / 1.96

/** The posterior of one mean with one normal prior and normal readings: precisions add up. A. Gelman et al., Bayesian Data Analysis, 2.5 (from memory). */
function conjugate(book: number, spreadPct: number, readings: readonly { value: number; pct: number }[]) {
  const weights = [1 / sigma(spreadPct) ** 2, ...readings.map(({ pct }) => 1 / sigma(pct) ** 2)]
  const means = [Math.log(book), ...readings.map(({ value }) => Math.log(value))]
  const whole = weights.reduce((sum, each) => sum + each, 0)
  const mean = means.reduce((sum, each, k) => sum + each * weights[k]!, 0) / whole
  const half = 1.96 / Math.sqrt(whole)
  return { value: Math.exp(mean), low: Math.exp(mean - half), high: Math.exp(mean + half) }
}

describe('what readings teach of the wire', () => {
  test('is the mean of book and readings by their certainty, on every line of that wire', () => {
    // 2 km at 20 °C: 135 Ω/km and 134 Ω/km; the second at 30 °C with 0.4 % per °C.
    const field = [reading('f1', 270), reading('f2', 268 * 1.04, { tempC: 30, meterPct: 2 })]
    const { value, low, high } = conjugate(130, 8, [
      { value: 135, pct: 1 },
      { value: 134, pct: 2 },
    ])
    for (const line of ['l1', 'l2']) {
      const { loopOhmPerKm } = fieldOf(planWith(field), line).learned
      // The wire leaks a thousandth of a microsiemens: to 1e-6 the loop is its ohms.
      expect(loopOhmPerKm!.value).toBeCloseTo(value, 3)
      expect(loopOhmPerKm!.low).toBeCloseTo(low, 2)
      expect(loopOhmPerKm!.high).toBeCloseTo(high, 2)
      expect(loopOhmPerKm!.book).toBe(130)
    }
  })
  test('is what loop, verdicts and odds are reckoned with', () => {
    const plan = planWith([reading('f1', 280)])
    const learned = fieldOf(plan).learned.loopOhmPerKm!
    const report = reportPlan(plan)
    expect(report.lines[1]!.loopOhms).toBeCloseTo(learned.value * 3, 4)
    const { learnt } = learnedOf(plan, measurePlan(plan))
    expect(Math.log(1 + learnt.get('w')!.spread!.loopOhmPerKm! / 100) / 1.96).toBeCloseTo(
      Math.log(learned.high / learned.low) / 2 / 1.96,
      4,
    )
  })
  test('is nothing of a wire whose figures are exact, and nothing of what was not read', () => {
    expect(fieldOf(planWith([reading('f1', 262)], [TEST_WIRE]))).toMatchObject({ learned: {}, oddities: [] })
    expect(
      Object.keys(
        fieldOf(planWith([reading('f1', 262)], spread({ loopOhmPerKm: 8, nanoFPerKm: 15 }))).learned,
      ),
    ).toEqual(['loopOhmPerKm'])
  })
  test('holds for capacitance and leakage, in the weather of the reading', () => {
    const wires = spread({ loopOhmPerKm: 8, nanoFPerKm: 15, wetNanoFPerKm: 25, wetMicroSPerKm: 200 })
    const open = { far: 'open', weather: 'wet' }
    const field = [
      reading('f1', 160, { ...open, what: 'nanoF' }),
      // 2 km of 20 µS/km are 25 kΩ; a third of the loop lies in series: R/3 of a line that leaks evenly (first terms of coth).
      reading('f2', 20 + 0.26 / 3, { ...open, what: 'kOhms', meterPct: 5 }),
    ]
    const { learned } = fieldOf(planWith(field, wires))
    const wet = conjugate(75, 25, [{ value: 80, pct: 1 }])
    expect(learned.wetNanoFPerKm!.value).toBeCloseTo(wet.value, 1)
    const leak = conjugate(20, 200, [{ value: 25, pct: 5 }])
    expect(learned.wetMicroSPerKm!.value / leak.value).toBeCloseTo(1, 2)
    expect(learned).not.toHaveProperty('nanoFPerKm')
  })
  test('holds the planted figure in its band 95 times of a hundred, and is narrower than the book', () => {
    const normal = seededNormal(7)
    let held = 0
    for (let k = 0; k < 200; k++) {
      const truth = 130 * Math.exp(sigma(8) * normal())
      const field = [600, 1200, 2000].map((wireM, i) =>
        reading(`f${i}`, truth * (wireM / 1000) * Math.exp(sigma(1) * normal()), { wireM }),
      )
      // A lot that the book would bring about three times of a thousand is asked about.
      const found = fieldOf(planWith(field)).learned.loopOhmPerKm
      if (!found) continue
      const { low, high } = found
      expect(high / low).toBeLessThan(1.02)
      if (low <= truth && truth <= high) held++
    }
    // Binomial of 200 at 0.95: three standard deviations are 9.
    expect(held).toBeGreaterThan(180)
    expect(held).toBeLessThan(200)
  })
})

describe('a reading that is far from what is expected', () => {
  test('is asked about, with what would explain it, and teaches nothing', () => {
    const field = [reading('f1', 131 * 0.8, { wireM: 800 }), reading('f2', 131 * 2 + 30)]
    const { learned, oddities } = fieldOf(planWith(field))
    expect(oddities).toHaveLength(1)
    expect(oddities[0]).toMatchObject({ record: 'f2', read: 292 })
    expect(oddities[0]!.expected).toBeCloseTo(262, 0)
    expect(oddities[0]!.because.slice(0, 2).map(({ code }) => code)).toEqual(['bad-splice', 'more-wire'])
    // 30 of 262 Ω more are so much of 2 km more wire.
    expect(oddities[0]!.because[1]).toMatchObject({ wireM: expect.closeTo((2000 * 30) / 262, 0) })
    const alone = conjugate(130, 8, [{ value: 131, pct: 1 }])
    expect(learned.loopOhmPerKm!.value).toBeCloseTo(alone.value, 2)
  })
  test('is told of a wire of exact figures too', () => {
    const { oddities, learned } = fieldOf(planWith([reading('f1', 270)], [TEST_WIRE]))
    expect(learned).toEqual({})
    expect(oddities[0]).toMatchObject({ record: 'f1', expected: expect.closeTo(260, 2), read: 270 })
  })
  test('that was undone is asked about no more', () => {
    const field = [reading('f1', 400), { id: 'f2', line: 'l1', kind: 'undone', record: 'f1' }]
    expect(fieldOf(planWith(field))).toMatchObject({ oddities: [], learned: {} })
  })
  test('can be all that there is: a lot that the book does not know', () => {
    const field = [reading('f1', 320), reading('f2', 321)]
    const { oddities, learned } = fieldOf(planWith(field))
    expect(oddities.map(({ record }) => record).sort()).toEqual(['f1', 'f2'])
    expect(learned).toEqual({})
  })
})

test('readings of one line far from the end look just at the wire between meter and end', () => {
  const plan = planWith([])
  const { expect: ask } = learnedOf(plan, measurePlan(plan))
  const line = plan.lines.keys().next().value!
  const loop = { line, far: 'short', what: 'loopOhms', meterPct: 1, tempC: 20 } as const
  expect(ask({ ...loop, wireM: 500, toward: 'from' })!.value).toBeCloseTo(65, 3)
  const { value, low, high } = ask({ ...loop, wireM: 500, toward: 'to' })!
  expect(value).toBeCloseTo(195, 3)
  // Lot of wire and meter together.
  const half = 1.959964 * Math.hypot(sigma(8), sigma(1))
  expect([low, high]).toEqual([
    expect.closeTo(195 * Math.exp(-half), 2),
    expect.closeTo(195 * Math.exp(half), 2),
  ])
})
