import { describe, expect, test } from 'vitest'
import {
  locateByFarad,
  locateByLoopOhm,
  murrayOhm,
  openPart,
  shortFromBothEndsOhm,
  varleyOhm,
} from '../../src/budget/fault-location'
import { builtInSet, builtInWire } from '../reference/built-in-entry'
import { DRY, OHMS_ONLY, rowOfSets } from '../reference/test-circuit'

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
  test('readings from both ends leave the ohms of the short out', () => {
    expect(shortFromBothEndsOhm(30 + 7, 70 + 7, 100)).toBe(30)
  })
  test('an open stands where the capacitances part', () => {
    expect(openPart(30e-9, 70e-9)).toBeCloseTo(0.3, 12)
  })
})

describe('a place on the net', () => {
  const set = builtInSet('crank-1600')
  // s0 ── 400 Ω ── s1 ── 400 Ω ── s2
  const model = rowOfSets([set, set, set], OHMS_ONLY, 400)

  test('is counted along the way, over stations', () => {
    const located = locateByLoopOhm(model, DRY, 's0', 's2', 500)
    expect(located).toEqual({
      kind: 'place',
      place: { line: 'l1', wireM: expect.closeTo(100, 6), totalM: expect.closeTo(500, 6) },
    })
  })
  test('is told from the line’s own start when read from its far end', () => {
    const located = locateByLoopOhm(model, DRY, 's2', 's0', 100)
    expect(located).toEqual({
      kind: 'place',
      place: { line: 'l1', wireM: expect.closeTo(300, 6), totalM: expect.closeTo(100, 6) },
    })
  })
  test('is beyond the way where the reading is more than the whole loop', () => {
    expect(locateByLoopOhm(model, DRY, 's0', 's2', 900)).toEqual({
      kind: 'beyond',
      wholeWay: expect.closeTo(800, 6),
    })
  })
  test('of an open goes by capacitance', () => {
    const wire = builtInWire('wd-1a')
    const line = rowOfSets([set, set], wire, 2000)
    const located = locateByFarad(line, DRY, 's0', 's1', wire.nanoFPerKm * 1e-9 * 1.5)
    expect(located).toMatchObject({ kind: 'place', place: { line: 'l0', wireM: expect.closeTo(1500, 6) } })
  })
})

test('on an earth return the electrode where one stands is passed first, whichever end that is', () => {
  const set = builtInSet('crank-1600')
  const row = rowOfSets([set, set], OHMS_ONLY, 1000)
  // 1000 Ω of loop are 500 Ω of one wire, with 20 Ω of electrode at s0 and 200 Ω at s1.
  const earth = { ...row, lines: row.lines.map((line) => ({ ...line, electrodeOhms: [20, 200] as const })) }
  const at = (from: string, to: string, ohms: number) => {
    const located = locateByLoopOhm(earth, DRY, from, to, ohms)
    return located.kind === 'place' ? located.place.wireM : located.kind
  }
  expect(at('s0', 's1', 20 + 100)).toBeCloseTo(200, 6)
  expect(at('s1', 's0', 200 + 100)).toBeCloseTo(800, 6)
})
