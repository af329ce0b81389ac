import { describe, expect, test } from 'vitest'
import { murrayOhm, varleyOhm } from '../../src/budget/loop-tests'

describe('bridge readings', () => {
  test('Murray: 332 of 1000 on a loop of 54.07 Ω at 16.46 Ω per mile is 1.09 miles', () => {
    // Hawkins Electrical Guide, vol. 3 (1914), fig. 597 and its example.
    expect(murrayOhm(54.07, 332, 668) / 16.46).toBeCloseTo(1.09, 2)
  })
  test('Murray: arms of 3 : 1 on a 500 m cable of 1.6 Ω per km find the fault in the middle', () => {
    // V. K. Mehta, Principles of Power System, underground cables, Murray example (from memory).
    expect((murrayOhm(1.6, 1, 3) / 1.6) * 1000).toBeCloseTo(250, 9)
  })
  test('Varley: P 5, Q 10, 16 Ω for the loop and 7 Ω for the fault at 0.4 Ω per km is 7.5 km', () => {
    // V. K. Mehta, Principles of Power System, Varley example (from memory). The loop by its first balance: P / Q · 16 Ω.
    const loopOhm = (5 / 10) * 16
    expect(varleyOhm(loopOhm, 7, 5, 10) / 0.4).toBeCloseTo(7.5, 9)
  })
  test('Varley with equal arms: 18.17 Ω on the loop of 54.07 Ω is where Murray found it', () => {
    // Both methods on the line of Hawkins’ example: algebra, to the two decimals of the rheostat.
    expect(varleyOhm(54.07, 18.17)).toBeCloseTo(murrayOhm(54.07, 332, 668), 2)
  })
})
