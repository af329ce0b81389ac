import { describe, expect, test } from 'vitest'
import { DEFAULT_LAYING, LAYING_RATES, type LayingAllowances } from '../../src/catalog/laying-rates'
import { hoursOfLine } from '../../src/materials/hours'
import type { MeasuredLine } from '../../src/measure/measured'
import type { LineId } from '../../src/plan/id'
import { LAYS, type Lay } from '../../src/plan/plan'
import { METRES_PER_FOOT } from '../../src/units'

const line = (legs: readonly { groundM: number; mapM?: number; lay?: Lay }[]): MeasuredLine => {
  const full = legs.map(({ groundM, mapM = groundM, lay = 'surface' as const }) => ({
    mapM,
    groundM,
    onGrid: true,
    laidM: groundM,
    bearingDeg: 0,
    lay,
  }))
  const sum = (of: (leg: (typeof full)[number]) => number) => full.reduce((total, leg) => total + of(leg), 0)
  const groundM = sum((leg) => leg.groundM)
  return {
    id: 'l' as LineId,
    mapM: sum((leg) => leg.mapM),
    groundM,
    laidM: groundM,
    wireM: groundM,
    legs: full,
  }
}

const foot = DEFAULT_LAYING.foot

test('5 km on the surface take a foot party 2 hours at 2.5 km/h', () => {
  expect(hoursOfLine(line([{ groundM: 5000 }]), 1, 0).totalH).toBeCloseTo(2, 9)
})

test('each lay goes at its own rate and the line takes the largest crew', () => {
  const hours = hoursOfLine(line([{ groundM: 2500 }, { groundM: 750, lay: 'overhead' }]), 1, 0)
  expect(hours.layingH).toBeCloseTo(2, 9)
  expect(hours.crew).toBe(6)
})

test('2000 ft of ascent cost an hour, as Naismith has it, where the whole leg climbs and falls as much', () => {
  // Naismith’s rule, Scottish Mountaineering Club Journal 2 (1892), p. 136. 600 m is 2000 ft to within 2 %.
  const riseM = 2000 * METRES_PER_FOOT
  const mapM = 4000
  const groundM = Math.hypot(mapM, 2 * riseM)
  const hours = hoursOfLine(line([{ groundM, mapM }]), 1, 0)
  expect(Math.abs(hours.climbingH - 1)).toBeLessThan(0.02)
})

describe('crossings, after Popular Science Monthly 90 (1917), p. 820', () => {
  const minutes = (kind: 'track' | 'road' | 'railway' | 'power-line', lay: Lay) =>
    hoursOfLine(line([{ groundM: 100 }]), 1, 0, [{ kind, lay }]).crossingsH * 60
  test('a buried track crossing adds 3 to 4 minutes, an overhead one 5 to 6', () => {
    expect(minutes('track', 'buried')).toBeGreaterThanOrEqual(3)
    expect(minutes('track', 'buried')).toBeLessThanOrEqual(4)
    expect(minutes('road', 'overhead')).toBeGreaterThanOrEqual(5)
    expect(minutes('road', 'overhead')).toBeLessThanOrEqual(6)
  })
  test('a power line overhead is passed under and adds nothing', () => {
    expect(minutes('power-line', 'surface')).toBe(0)
  })
})

test('the night makes everything half as long again', () => {
  const night: LayingAllowances = { ...foot, isNight: true }
  const one = line([{ groundM: 3000, mapM: 2900 }])
  const byDay = hoursOfLine(one, 1, 2, [{ kind: 'road', lay: 'buried' }], foot)
  const byNight = hoursOfLine(one, 1, 2, [{ kind: 'road', lay: 'buried' }], night)
  expect(byNight.totalH / byDay.totalH).toBeCloseTo(1.5, 9)
  expect(byNight.recoveryH / byDay.recoveryH).toBeCloseTo(1.5, 9)
})

test('every lay has a rate for each means, with its source', () => {
  for (const lay of LAYS) {
    for (const means of ['foot', 'vehicle'] as const) {
      const rate = LAYING_RATES.find((one) => one.lay === lay && one.means === means)
      expect(rate?.source).toBeTruthy()
    }
  }
})
