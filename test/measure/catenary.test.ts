import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Hanging, hang, hangBySag, tensionAfterN, wireHeightM } from '../../src/measure/catenary'
import { METRES_PER_FOOT, NEWTONS_PER_POUND_FORCE } from '../../src/units'

const hung = (result: ReturnType<typeof hang>): Hanging => {
  if (!result.ok) throw new Error(result.problems[0]!.message)
  return result.value
}

describe('worked examples of the textbooks', () => {
  // Forces in kg as printed: every result is a ratio of them, so the unit falls out.
  test('250 m at 3500 kg, 0.65 kg/m', () => {
    // Overhead-line text, companion solutions, example 5.1: 7000 kg breaking, safety factor 2.
    const span = hung(hang({ spanM: 250, weightNPerM: 0.65, horizontalN: 3500 }))
    expect(span.sagM).toBeCloseTo(1.451, 3)
    expect(span.wireM).toBeCloseTo(250.0225, 4)
  })

  test('500 m at 10 000 kg, 1 kg/m', () => {
    // A published sag note: 3.125 m by the parabola, w L² / 8 H; the catenary is longer by 1 part in 10 000.
    expect(hung(hang({ spanM: 500, weightNPerM: 1, horizontalN: 10_000 })).sagM).toBeCloseTo(3.125, 3)
  })

  test('260 m at 1550 kg, 0.68 kg/m', () => {
    // Mehta, Principles of Power System (from memory): 3100 kg ultimate, safety factor 2; 3.7 m.
    expect(hung(hang({ spanM: 260, weightNPerM: 0.68, horizontalN: 1550 })).sagM).toBeCloseTo(3.7, 1)
  })

  test('a river crossing from a 30 m tower up to a 90 m tower', () => {
    // Wadhwa, Electrical Power Systems, example 7.4: 300 m, 2000 kg, 1 kg/m; the wire is lowest 250 m short of the lower tower,
    // by the parabola; 54.375 m over the water in the middle (the answer from memory).
    const span = hung(hang({ spanM: 300, riseM: 60, weightNPerM: 1, horizontalN: 2000 }))
    // The catenary weighs the slope as well: within 1 % of the parabola's figures.
    expect(Math.abs(span.lowestM - -250)).toBeLessThan(5)
    expect(30 + wireHeightM(span, 150)).toBeCloseTo(54.375, 0)
    expect(Math.abs(30 + wireHeightM(span, 150) - 54.375)).toBeLessThan(0.15)
  })

  test('wind falls and the day warms by 30 K: the stress of the companion text', () => {
    // Companion text 2273, example 3.14: 0.9 kg/m, 300 m, 240 mm², 8000 kg at safety factor 2, wind 38.5 kg/m² on 19.5 mm,
    // E = 9320 kg/mm², α = 18.44·10⁻⁶: σ₂ = 11 951 292 kg/m².
    const withWind = Math.hypot(0.9, 38.5 * 0.0195)
    const horizontal = tensionAfterN(
      300,
      { stiffnessN: 9320 * 240, expansionPerC: 18.44e-6 },
      { weightNPerM: withWind, horizontalN: 4000, tempC: 0 },
      { weightNPerM: 0.9, tempC: 30 },
    )
    expect(horizontal / 240e-6 / 11_951_292).toBeCloseTo(1, 4)
    expect((0.9 * 300 ** 2) / (8 * horizontal)).toBeCloseTo(3.53, 2)
  })
})

describe('field wire of 48 lb a mile', () => {
  // w = 48 / 5280 lb/ft; H = w L² / 8 S and length L + 8 S² / 3 L, by hand.
  const weightNPerM = ((48 / 5280) * NEWTONS_PER_POUND_FORCE) / METRES_PER_FOOT
  test.each([
    { spanFt: 100, sagFt: 2, pounds: 5.68, wireFt: 100.107 },
    { spanFt: 150, sagFt: 3, pounds: 8.52, wireFt: 150.16 },
    { spanFt: 200, sagFt: 4, pounds: 11.36, wireFt: 200.213 },
    { spanFt: 300, sagFt: 6, pounds: 17.05, wireFt: 300.32 },
  ])('sags $sagFt ft in $spanFt ft at $pounds lb', ({ spanFt, sagFt, pounds, wireFt }) => {
    const span = hung(
      hangBySag({ spanM: spanFt * METRES_PER_FOOT, sagM: sagFt * METRES_PER_FOOT, weightNPerM }),
    )
    // The hand figures are the parabola's: 0.1 % at 2 % of sag.
    expect(span.horizontalN / NEWTONS_PER_POUND_FORCE / pounds).toBeCloseTo(1, 2)
    expect(span.wireM / METRES_PER_FOOT).toBeCloseTo(wireFt, 2)
  })

  test.each([
    { spanM: 30, horizontalN: 20, sagM: 0.746 },
    { spanM: 60, horizontalN: 50, sagM: 1.194 },
    { spanM: 100, horizontalN: 111, sagM: 1.494 },
  ])('sags $sagM m in $spanM m at $horizontalN N', ({ spanM, horizontalN, sagM }) => {
    expect(hung(hang({ spanM, weightNPerM, horizontalN })).sagM).toBeCloseTo(sagM, 2)
  })
})

const spans = fc.record({
  spanM: fc.double({ min: 5, max: 300, noNaN: true }),
  riseM: fc.double({ min: -40, max: 40, noNaN: true }),
  sagPct: fc.double({ min: 0.2, max: 15, noNaN: true }),
})

test('the tension found for a sag gives that sag', () => {
  fc.assert(
    fc.property(spans, ({ spanM, riseM, sagPct }) => {
      const sagM = (spanM * sagPct) / 100
      const span = hung(hangBySag({ spanM, riseM, weightNPerM: 0.13, sagM }))
      expect(span.sagM / sagM).toBeCloseTo(1, 8)
    }),
  )
})

test('a wire is at its supports at both ends, and below their line between them', () => {
  fc.assert(
    fc.property(spans, ({ spanM, riseM, sagPct }) => {
      const span = hung(hangBySag({ spanM, riseM, weightNPerM: 0.13, sagM: (spanM * sagPct) / 100 }))
      expect(wireHeightM(span, 0)).toBeCloseTo(0, 9)
      expect(wireHeightM(span, spanM)).toBeCloseTo(riseM, 6)
      for (const t of [0.2, 0.5, 0.9]) expect(wireHeightM(span, t * spanM)).toBeLessThan(t * riseM)
    }),
  )
})

test('cold tightens a wire and warmth slackens it, and coming back it is as it was', () => {
  const stretch = { stiffnessN: 130_000, expansionPerC: 14e-6 }
  const at20 = { weightNPerM: 0.1327, horizontalN: 100, tempC: 20 }
  const cold = tensionAfterN(50, stretch, at20, { tempC: -20 })
  expect(cold).toBeGreaterThan(100)
  expect(tensionAfterN(50, stretch, at20, { tempC: 50 })).toBeLessThan(100)
  expect(tensionAfterN(50, stretch, { ...at20, horizontalN: cold, tempC: -20 }, { tempC: 20 })).toBeCloseTo(
    100,
    6,
  )
})

test('no span, no weight, no tension and no sag are told, not computed', () => {
  for (const [spanM, weightNPerM, horizontalN] of [
    [0, 1, 1],
    [10, 0, 1],
    [10, 1, 0],
    [10, Number.NaN, 1],
    [1000, 1, 1],
  ] as const) {
    expect(hang({ spanM, weightNPerM, horizontalN }).ok).toBe(false)
  }
  expect(hangBySag({ spanM: 10, weightNPerM: 1, sagM: 0 }).ok).toBe(false)
})
