import { describe, expect, test } from 'vitest'
import { seeded, seededNormal } from '../../src/budget/seeded'
import { layAsWalked, setUsedWire } from '../../src/field/as-laid'
import { smoothTrack } from '../../src/field/smooth-track'
import { pathM } from '../../src/geo/leg-length'
import { measureLine } from '../../src/measure/measure-line'
import type { TrackPoint } from '../../src/plan/field-schema'
import type { LineId } from '../../src/plan/id'
import { fieldPlan } from './field-plan'

/** A walk of half an hour at 1 m/s that turns at random, and what a receiver tells of it: errors that hang together from second to second. */
function walk(seed: number, sigmaM: number, together: number) {
  const normal = seededNormal(seed)
  let [heading, x, y] = [0, 0, 0]
  let [ex, ey] = [sigmaM * normal(), sigmaM * normal()]
  const truth: [number, number][] = []
  const told: TrackPoint[] = []
  const fresh = sigmaM * Math.sqrt(1 - together ** 2)
  for (let second = 0; second < 1800; second++) {
    heading += 0.03 * normal()
    x += Math.cos(heading)
    y += Math.sin(heading)
    ex = together * ex + fresh * normal()
    ey = together * ey + fresh * normal()
    const at = (east: number, north: number) => [10 + east / 111_319.49, north / 110_574.28] as const
    truth.push([...at(x, y)])
    const time = new Date(Date.UTC(2026, 10, 25) + second * 1000).toISOString()
    told.push([...at(x + ex, y + ey), null, time, sigmaM])
  }
  return { truth, told }
}

describe('a walked track', () => {
  test.each([
    [4, 0.5],
    [4, 0.9],
    [4, 0.98],
    [8, 0.95],
  ])(
    'of a receiver %d m off, errors hanging together by %d, comes out within 1.5 parts in 100 of its length',
    (sigmaM, together) => {
      const ratios = Array.from({ length: 8 }, (_, k) => {
        const { truth, told } = walk(k + 1, sigmaM, together)
        return pathM(smoothTrack(told)) / pathM(truth)
      })
      const mean = ratios.reduce((sum, each) => sum + each, 0) / ratios.length
      expect(Math.abs(mean - 1)).toBeLessThan(0.015)
    },
  )
  test('raw is far too long', () => {
    const { truth, told } = walk(1, 4, 0.5)
    expect(pathM(told.map(([lon, lat]) => [lon, lat])) / pathM(truth)).toBeGreaterThan(2)
  })
  test('of few points is taken as it is, and points of no worth are left out', () => {
    expect(
      smoothTrack([
        [1, 2],
        [3, 4],
      ]),
    ).toEqual([
      [1, 2],
      [3, 4],
    ])
    expect(
      smoothTrack([
        [1, 2, null, null, 500],
        [3, 4],
      ]),
    ).toEqual([[3, 4]])
  })
})

const LINE = { id: 'l1', from: 'a', to: 'b', wireM: 1200 }
const id = 'l1' as LineId

describe('a line as laid', () => {
  test('follows the track, from its own from to its to, and is laid as before', () => {
    const random = seeded(3)
    // From b back to a over a point to the south-east, told backwards.
    const b = 1 / 1113.1949
    const points = Array.from({ length: 200 }, (_, k): TrackPoint => {
      const t = k / 199
      const south = -0.002 * (1 - Math.abs(2 * t - 1))
      return [b * (1 - t), south + 1e-6 * random(), null, new Date(k * 3000).toISOString(), 3]
    })
    const plan = fieldPlan([LINE], { field: [{ id: 'f1', line: 'l1', kind: 'track', points }] })
    const laid = layAsWalked(plan, 'f1')
    const line = laid.lines.get(id)!
    expect(line.bends.length).toBeGreaterThan(0)
    expect(line.bends.every(([, lat]) => lat < 0)).toBe(true)
    expect(line.legs).toHaveLength(line.bends.length + 1)
    expect(new Set(line.legs.map(({ lay }) => lay))).toEqual(new Set(['surface']))
    // 2 · √(221² + 45²) = 451 m along the ground, less what smoothing takes off so sharp a turn.
    expect(measureLine(laid, line).groundM).toBeGreaterThan(435)
    expect(measureLine(laid, line).groundM).toBeLessThan(455)
    expect(layAsWalked(plan, 'nobody')).toBe(plan)
  })
  test('takes the slack that its real wire needs, and no less than its way', () => {
    const plan = fieldPlan([LINE])
    const measured = measureLine(plan, plan.lines.get(id)!)
    const result = setUsedWire(plan, id, measured, 1310)
    if (!result.ok) throw new Error(result.problems[0]!.message)
    expect(measureLine(result.value, result.value.lines.get(id)!).wireM).toBeCloseTo(1310, 6)
    expect(setUsedWire(plan, id, measured, 900)).toMatchObject({
      ok: false,
      problems: [{ code: 'no-such-slack' }],
    })
  })
})
