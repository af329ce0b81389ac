import { describe, expect, test } from 'vitest'
import {
  DEFAULT_LAYING,
  LAYING_RATES,
  LAYING_SOURCES,
  type LayingAllowances,
} from '../../src/catalog/laying-rates'
import { hoursOfLine, hoursOfPlan } from '../../src/materials/hours'
import type { MeasuredLine } from '../../src/measure/measured'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { LAYS } from '../../src/plan/lays'
import { EMPTY_PLAN, type Lay, type Line, type Plan } from '../../src/plan/plan'
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
  const one = line([{ groundM: 2500 }, { groundM: 750, lay: 'overhead' }])
  const hours = hoursOfLine(one, 1, 0, [], { ...foot, people: 6 })
  expect(hours.layingH).toBeCloseTo(2, 9)
  expect(hours.crew).toBe(6)
})

test('four people take half as long again over a lay that takes six, and ten no less than six', () => {
  const one = line([{ groundM: 750, lay: 'overhead' }])
  const withPeople = (people: number) => hoursOfLine(one, 1, 0, [], { ...foot, people }).layingH
  expect(withPeople(4)).toBeCloseTo(1.5, 9)
  expect(withPeople(10)).toBeCloseTo(withPeople(6), 9)
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

describe('a net of two lines of 2 h, a splice of 10 min and three stations of 15 min', () => {
  const [a, b, c] = ['a', 'b', 'c'] as StationId[]
  const join = (id: string, from: StationId, to: StationId): Line => ({
    id: id as LineId,
    from,
    to,
    bends: [],
    legs: [{ lay: 'surface' }],
    wire: 'w',
    pairs: 1,
    return: 'pair',
  })
  const lines = [join('l', a!, b!), join('m', b!, c!)]
  const id = 'c1' as CircuitId
  const sets = new Map([a!, b!, c!].map((station) => [station, 'crank-1000']))
  const plan: Plan = {
    ...EMPTY_PLAN,
    stations: new Map([a!, b!, c!].map((one) => [one, { id: one, name: one, note: '', position: [0, 0] }])),
    lines: new Map(lines.map((one) => [one.id, one])),
    circuits: new Map([[id, { id, name: 'net', lines: lines.map((one) => one.id), sets, supply: null }]]),
  }
  const measured = new Map(lines.map((one) => [one.id, { ...line([{ groundM: 5000 }]), id: one.id }]))
  const piece = (spool: string) => ({ spool, wireM: 2500, cutM: 2500, pair: 0 })
  const pieces = new Map([[lines[0]!.id, [piece('s1'), piece('s2')]]])
  const by = (crews: number) => hoursOfPlan(plan, measured, pieces, undefined, { ...foot, crews })

  test('takes one crew all of it, one after the other', () => {
    const net = by(1)
    expect(net.totalH).toBeCloseTo(4 + 10 / 60 + 45 / 60, 9)
    expect(net.personHours).toBeCloseTo(4 * (4 + 10 / 60) + 45 / 60, 9)
    expect(net.recoveryH).toBeCloseTo(5, 9)
    expect(net.crew).toBe(4)
  })
  test('takes two crews a line each, and the stations to whoever is free first', () => {
    // 2 h 10 min and one station; 2 h and two stations.
    expect(by(2).totalH).toBeCloseTo(2.5, 9)
    expect(by(2).recoveryH).toBeCloseTo(2.5, 9)
  })
  test('is done no sooner by more crews than there is work for', () => {
    expect(by(50).totalH).toBeCloseTo(2 + 10 / 60, 9)
  })
})

test('every other allowance says where it comes from, and a guess says that it is one', () => {
  for (const source of Object.values(LAYING_SOURCES))
    expect(source).toMatch(/allowance|\(1892\)|\(1917\)|14234/)
})
