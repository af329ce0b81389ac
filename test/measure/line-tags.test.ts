import { describe, expect, test } from 'vitest'
import type { Position } from '../../src/geo/position'
import { branchStations, DEFAULT_TAGGING, lineTags } from '../../src/measure/line-tags'
import { measureLine } from '../../src/measure/measure-line'
import type { CircuitId, HazardId, LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Hazard, type Line, type Plan } from '../../src/plan/plan'

const station = (name: string, lonDeg: number, latDeg: number) => {
  const id = name as StationId
  return [id, { id, name, note: '', position: [lonDeg, latDeg] as const }] as const
}
const join = (id: string, from: string, to: string, more: Partial<Line> = {}): Line => ({
  id: id as LineId,
  from: from as StationId,
  to: to as StationId,
  bends: [],
  legs: [{ lay: 'surface' }],
  wire: 'w',
  pairs: 1,
  return: 'pair',
  ...more,
})

//        D
//        │ l3
//  A ─l1─ B ─l2─ C        l1 goes overhead in its second half; l2 is 6.4 km long
const l1 = join('l1', 'A', 'B', { bends: [[10.005, 55]], legs: [{ lay: 'surface' }, { lay: 'overhead' }] })
const l2 = join('l2', 'B', 'C')
const l3 = join('l3', 'B', 'D')
const net = { id: 'c' as CircuitId, name: 'net', lines: [l1.id, l2.id, l3.id], sets: new Map(), supply: null }
const plan: Plan = {
  ...EMPTY_PLAN,
  stations: new Map([
    station('A', 10, 55),
    station('B', 10.01, 55),
    station('C', 10.11, 55),
    station('D', 10.01, 55.01),
  ]),
  lines: new Map([l1, l2, l3].map((line) => [line.id, line])),
  circuits: new Map([[net.id, net]]),
}
const first = measureLine(plan, l1)
const second = measureLine(plan, l2)

/** The plan with a railway that runs north across l2, and a lake of so many degrees of longitude further on. */
const crossed: Plan = {
  ...plan,
  hazards: new Map(
    [
      { hazard: 'railway', name: 'siding', geometry: northward(10.03) },
      {
        hazard: 'water',
        name: 'mere',
        geometry: {
          type: 'Polygon',
          coordinates: [
            [
              [10.065, 54.99],
              [10.075, 54.99],
              [10.075, 55.01],
              [10.065, 55.01],
              [10.065, 54.99],
            ],
          ],
        },
      },
    ].map((one, i) => [`h${i}` as HazardId, { id: `h${i}` as HazardId, ...one } as Hazard]),
  ),
}
function northward(lonDeg: number): Hazard['geometry'] {
  const coordinates: Position[] = [
    [lonDeg, 54.99],
    [lonDeg, 55.01],
  ]
  return { type: 'LineString', coordinates }
}

test('a station where three lines of a circuit meet is a branch, one where two meet is not', () => {
  expect([...branchStations(plan)]).toEqual(['B'])
  const two: Plan = { ...plan, circuits: new Map([[net.id, { ...net, lines: [l1.id, l2.id] }]]) }
  expect(branchStations(two).size).toBe(0)
})

test('test points stand at both ends, and never more than 2 km apart', () => {
  const points = lineTags(plan, second, l2).filter((tag) => tag.isTestPoint)
  expect(points[0]).toMatchObject({
    number: 1,
    groundM: 0,
    reasons: [{ code: 'end', station: 'B', branches: true }],
  })
  expect(points.at(-1)!.reasons).toEqual([{ code: 'end', station: 'C', branches: false }])
  for (const [i, { groundM }] of points.slice(1).entries()) {
    expect(groundM - points[i]!.groundM).toBeLessThanOrEqual(DEFAULT_TAGGING.testEveryM + 1e-6)
  }
})

describe('tags, as US Army subcourse SS0444, p. 2-9, par. 37 places them', () => {
  test('hang at both stations and where surface wire goes overhead', () => {
    const tags = lineTags(plan, first, l1)
    expect(tags.map((tag) => tag.reasons)).toEqual([
      [{ code: 'end', station: 'A', branches: false }],
      [{ code: 'lay-changes', from: 'surface', to: 'overhead' }],
      [{ code: 'end', station: 'B', branches: true }],
    ])
    expect(tags[1]!.groundM).toBeCloseTo(first.legs[0]!.groundM, 6)
    expect(tags[1]!.wireM).toBeCloseTo(8 + first.legs[0]!.laidM, 6)
  })

  test('hang on both sides of a railway, and on both banks of a water', () => {
    const tags = lineTags(crossed, second, l2)
    const at = (word: string) =>
      tags
        .filter(({ reasons }) => reasons.some((why) => why.code === 'crossing' && why.name.includes(word)))
        .map(({ groundM }) => groundM)
    const [near, far] = at('siding')
    expect(far! - near!).toBeCloseTo(2 * DEFAULT_TAGGING.besideCrossingM, 3)
    const banks = at('mere')
    // 0.01° of longitude at 55° of latitude: 111.320 km/° · cos 55°, WGS 84 a little more.
    expect(banks[1]! - banks[0]!).toBeCloseTo(640 + 2 * DEFAULT_TAGGING.besideCrossingM, -1)
  })

  test('stand as close as is asked for in bad country, numbered from the start', () => {
    const tags = lineTags(crossed, second, l2, undefined, { ...DEFAULT_TAGGING, tagEveryM: 300 })
    expect(tags.map((tag) => tag.number)).toEqual(tags.map((_, i) => i + 1))
    for (const [i, { groundM }] of tags.slice(1).entries()) {
      expect(groundM - tags[i]!.groundM).toBeLessThanOrEqual(300 + 15)
      expect(groundM).toBeGreaterThan(tags[i]!.groundM)
    }
  })
})
