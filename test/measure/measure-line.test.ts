import { describe, expect, test } from 'vitest'
import type { Position } from '../../src/geo/position'
import { measureLine, measurePlan } from '../../src/measure/measure-line'
import type { LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Leg, type Line, type Plan } from '../../src/plan/plan'
import type { Ground } from '../../src/terrain/ground'

const A = 'a' as StationId
const B = 'b' as StationId
const C = 'c' as StationId

const station = (id: StationId, position: Position) => [id, { id, name: id, note: '', position }] as const

function line(id: string, from: StationId, to: StationId, legs: Leg[], bends: Position[] = []): Line {
  return { id: id as LineId, from, to, bends, legs, wire: 'w', pairs: 1, return: 'pair' }
}

const l1 = line('l1', A, B, [{ lay: 'surface' }, { lay: 'overhead' }], [[10.01, 55]])
const l2 = line('l2', B, C, [{ lay: 'buried' }])

const plan: Plan = {
  ...EMPTY_PLAN,
  stations: new Map([station(A, [10, 55]), station(B, [10.02, 55]), station(C, [10.02, 55.01])]),
  lines: new Map([l1, l2].map((l) => [l.id, l])),
}

/** Ground that climbs one in ten everywhere, so that it is √1.01 times as long as the map says. */
const slope: Ground = { heightM: () => 0, groundM: (_from, _to, mapM) => mapM * Math.sqrt(1.01) }

describe('a line of a surface and an overhead leg', () => {
  const measured = measureLine(plan, l1)
  const [surface, overhead] = measured.legs

  test('is as long as its legs together', () => {
    expect(measured.mapM).toBeCloseTo(surface!.mapM + overhead!.mapM, 9)
    expect(measured.laidM).toBeCloseTo(surface!.laidM + overhead!.laidM, 9)
  })

  test('lays the surface leg with 20 % of slack', () => {
    expect(surface!.laidM / surface!.mapM).toBeCloseTo(1.2, 12)
  })

  test('lays the overhead leg with 3 % of slack and 0.107 % for a sag of 2 %', () => {
    // 8/3 s² at 2 % = 0.1067 %; the next term, 32/5 s⁴, is a millionth.
    expect(overhead!.laidM / overhead!.mapM).toBeCloseTo(1.03 * (1 + (8 / 3) * 0.02 ** 2), 5)
  })

  test('keeps 8 m of tail at each end in its electrical length', () => {
    expect(measured.wireM - measured.laidM).toBeCloseTo(16, 9)
  })

  test('runs east: a little north of 90° at 55° of latitude', () => {
    // Half the convergence of meridians, Δλ sin φ / 2, for Δλ = 0.01°.
    expect(surface!.bearingDeg).toBeCloseTo(90 - (0.01 * Math.sin((55 * Math.PI) / 180)) / 2, 4)
  })

  test('falls back to the map where the ground is not known, and says so', () => {
    expect(surface!.onGrid).toBe(false)
    expect(surface!.groundM).toBe(surface!.mapM)
  })
})

test('a slope of one in ten makes ground and wire half a per cent longer', () => {
  const flat = measureLine(plan, l2)
  const climbing = measureLine(plan, l2, slope)
  expect(climbing.legs[0]!.onGrid).toBe(true)
  expect(climbing.mapM).toBe(flat.mapM)
  expect(climbing.laidM / flat.laidM).toBeCloseTo(Math.sqrt(1.01), 12)
})

test('a leg with slack and sag of its own does not ask the plan', () => {
  const tight = line('l3', A, B, [{ lay: 'overhead', slackPct: 0, sagPct: 0 }])
  const measured = measureLine(plan, tight)
  expect(measured.laidM).toBe(measured.mapM)
})

test('only the line that an edit touched is measured again', () => {
  const before = measurePlan(plan)
  const moved: Plan = {
    ...plan,
    stations: new Map(plan.stations).set(C, { ...plan.stations.get(C)!, position: [10.03, 55.01] }),
  }
  const after = measurePlan(moved)
  expect(after.get(l1.id)).toBe(before.get(l1.id))
  expect(after.get(l2.id)!.mapM).toBeGreaterThan(before.get(l2.id)!.mapM)
})

test('other allowances, and ground that becomes known, measure a line again', () => {
  const before = measureLine(plan, l1)
  const longTails: Plan = { ...plan, allowances: { ...plan.allowances, tailM: 20 } }
  expect(measureLine(longTails, l1).wireM - before.wireM).toBeCloseTo(24, 9)
  expect(measureLine(longTails, l1, slope).groundM).toBeGreaterThan(before.groundM)
})
