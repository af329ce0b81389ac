import { describe, expect, test } from 'vitest'
import { measureLine } from '../../src/measure/measure-line'
import { branchStations, DEFAULT_TAGGING, tagsOf, testPointsOf } from '../../src/measure/tags'
import type { CircuitId, HazardId, LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Line, type Plan } from '../../src/plan/plan'
import type { Crossing } from '../../src/terrain/crossings'

const at = (name: string, lonDeg: number, latDeg: number) => {
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
const plan: Plan = {
  ...EMPTY_PLAN,
  stations: new Map([at('A', 10, 55), at('B', 10.01, 55), at('C', 10.11, 55), at('D', 10.01, 55.01)]),
  lines: new Map([l1, l2, l3].map((line) => [line.id, line])),
  circuits: new Map([
    [
      'c' as CircuitId,
      { id: 'c' as CircuitId, name: 'net', lines: [l1.id, l2.id, l3.id], sets: new Map(), supply: null },
    ],
  ]),
}
const first = measureLine(plan, l1)
const second = measureLine(plan, l2)

const crossing = (distanceM: number, kind: Crossing['kind'], insideM = 0): Crossing => ({
  hazard: 'h' as HazardId,
  kind,
  name: 'the old track',
  legIndex: 0,
  lay: 'surface',
  position: [10, 55],
  distanceM,
  angleDeg: 90,
  insideM,
})

test('a station where three lines of a circuit meet is a branch, one where two meet is not', () => {
  expect([...branchStations(plan)]).toEqual(['B'])
  const without = {
    ...plan,
    circuits: new Map([
      ['c' as CircuitId, { ...plan.circuits.get('c' as CircuitId)!, lines: [l1.id, l2.id] }],
    ]),
  }
  expect(branchStations(without).size).toBe(0)
})

test('test points stand at the branch and never more than 3 km apart', () => {
  const points = testPointsOf(plan, l2, second)
  expect(points[0]).toMatchObject({ at: 'B', groundM: 0 })
  expect(points.slice(1).map((point) => point.at)).toEqual([null, null])
  const runs = [...points.map((point) => point.groundM), second.groundM]
  for (const [i, runM] of runs.slice(1).entries())
    expect(runM - runs[i]!).toBeLessThanOrEqual(DEFAULT_TAGGING.testPointM)
})

describe('tags, as US Army subcourse SS0444, p. 2-9, par. 37 places them', () => {
  test('hang at both stations and where surface wire goes overhead', () => {
    const tags = tagsOf(plan, l1, first)
    expect(tags[0]).toMatchObject({ reason: 'station', note: 'A', groundM: 0 })
    expect(tags.at(-1)!.groundM).toBeCloseTo(first.groundM, 3)
    expect(tags.find((tag) => tag.reason === 'lay-changes')?.groundM).toBeCloseTo(first.legs[0]!.groundM, 6)
  })
  test('hang where the line leaves the station that it shares with others', () => {
    const leaves = tagsOf(plan, l1, first).filter((tag) => tag.reason === 'leaves-route')
    expect(leaves.map((tag) => tag.note)).toEqual(['off the lines at B'])
  })
  test('hang on both sides of a crossing, and on both banks of what is wide', () => {
    const tags = tagsOf(plan, l2, second, [
      crossing(500, 'track'),
      crossing(700, 'water', 40),
      crossing(900, 'keep-out'),
    ])
    const at = tags.filter((tag) => tag.reason === 'crossing').map((tag) => Math.round(tag.groundM))
    expect(at).toEqual([495, 505, 695, 745])
  })
  test('are never more than 1 km apart, and never two in one place', () => {
    const runs = tagsOf(plan, l2, second, [crossing(500, 'railway')]).map((tag) => tag.groundM)
    for (const [i, runM] of runs.slice(1).entries()) {
      expect(runM - runs[i]!).toBeLessThanOrEqual(DEFAULT_TAGGING.tagM + 1e-6)
      expect(runM - runs[i]!).toBeGreaterThanOrEqual(2)
    }
  })
})
