import { expect, test } from 'vitest'
import { sagFactor } from '../../src/measure/sag-factor'

test('a wire with no sag is as long as its span, and nearly so just above', () => {
  expect(sagFactor(0)).toBe(1)
  for (let exponent = -300; exponent < -6; exponent++) {
    expect(sagFactor(10 ** exponent)).toBeCloseTo(1, 12)
  }
})

test('the closed form agrees with chords laid along the parabola', () => {
  for (const sagPct of [0.5, 2, 5, 10, 25]) {
    const chords = 20_000
    let length = 0
    const y = (x: number) => (4 * sagPct * x * (1 - x)) / 100
    for (let i = 0; i < chords; i++) {
      length += Math.hypot(1 / chords, y((i + 1) / chords) - y(i / chords))
    }
    expect(sagFactor(sagPct)).toBeCloseTo(length, 8)
  }
})

test('it keeps within 0.01 % of a catenary of the same sag up to 5 %', () => {
  for (const sagPct of [1, 2, 3, 5]) {
    // Catenary over a span of 1: sag = c (cosh(1/2c) − 1), wire = 2c sinh(1/2c); c by bisection.
    let low = 0.1
    let high = 1e4
    for (let i = 0; i < 200; i++) {
      const c = (low + high) / 2
      if (c * (Math.cosh(1 / (2 * c)) - 1) > sagPct / 100) low = c
      else high = c
    }
    const wire = 2 * low * Math.sinh(1 / (2 * low))
    expect(Math.abs(sagFactor(sagPct) / wire - 1)).toBeLessThan(1e-4)
  }
})
