import { describe, expect, test } from 'vitest'
import { seeded, seededNormal } from '../../src/budget/seeded'
import { layAsPlanned, layAsWalked, setUsedWire } from '../../src/field/as-laid'
import { smoothTrack } from '../../src/field/smooth-track'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { pathM } from '../../src/geo/leg-length'
import { measureLine } from '../../src/measure/measure-line'
import { addRecord } from '../../src/plan/add-record'
import { asLaidOf, asPlanned } from '../../src/plan/as-laid-records'
import type { TrackPoint } from '../../src/plan/field-schema'
import type { LineId } from '../../src/plan/id'
import { standingRecords } from '../../src/plan/standing-records'
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

/** The same with what happens out there: the walker stands still now and then, the receiver jumps aside, and it is dark for a while. */
function roughWalk(seed: number) {
  const random = seeded(seed)
  const { truth, told } = walk(seed, 4, 0.95)
  const points: TrackPoint[] = []
  let [pausedS, leapS] = [0, 0]
  for (const [k, point] of told.entries()) {
    const isDark = k >= 900 && k < 930
    const moved = (pauseS: number, [lon, lat, , time, accuracyM]: TrackPoint): TrackPoint => [
      ...([lon, lat, null] as const),
      new Date(Date.parse(time!) + pauseS * 1000).toISOString(),
      accuracyM!,
    ]
    // Twice for five minutes: errors go on wandering while he stands.
    if (k === 400 || k === 1300) {
      const { told: still } = walk(seed + k, 4, 0.95)
      const { truth: way } = walk(seed + k, 4, 0.95)
      for (let s = 0; s < 300; s++) {
        const [lon, lat] = still[s]!
        const off = [lon - way[s]![0], lat - way[s]![1]] as const
        points.push(moved(pausedS + s, [truth[k]![0] + off[0], truth[k]![1] + off[1], null, point[3]!, 4]))
      }
      pausedS += 300
    }
    if (isDark) continue
    // Some seconds at a time, as under a wall of rock.
    if (random() < 0.004) leapS = 6
    const aside = leapS-- > 0 ? 0.0006 : 0
    points.push(moved(pausedS, [point[0] + aside, point[1] - aside, null, point[3]!, 4]))
  }
  return { truth, points }
}

test('pauses, leaps of the receiver and a stretch without it leave the length within 1 part in 100', () => {
  const ratios = Array.from({ length: 8 }, (_, k) => {
    const { truth, points } = roughWalk(k + 1)
    return pathM(smoothTrack(points)) / pathM(truth)
  })
  const mean = ratios.reduce((sum, each) => sum + each, 0) / ratios.length
  expect(Math.abs(mean - 1)).toBeLessThan(0.01)
  // One walk of half an hour: a receiver that errs by 4 m leaves up to 1 % at random.
  for (const ratio of ratios) expect(Math.abs(ratio - 1)).toBeLessThan(0.02)
})

test('a leap of the receiver leads no bend aside', () => {
  const { truth, points } = roughWalk(3)
  const offM = ([lon, lat]: readonly [number, number]) =>
    Math.min(...truth.map(([x, y]) => Math.hypot((lon - x) * 111_319.49, (lat - y) * 110_574.28)))
  // A receiver that errs by 4 m from second to second is hardly ever 12 m off once it is smoothed; a leap is of 94 m.
  expect(Math.max(...smoothTrack(points).map(offM))).toBeLessThan(12)
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
    const laid = layAsWalked(plan, 'f1', { id: 'f2' }, measureLine)
    const line = laid.lines.get(id)!
    expect(line.bends.length).toBeGreaterThan(0)
    expect(line.bends.every(([, lat]) => lat < 0)).toBe(true)
    expect(line.legs).toHaveLength(line.bends.length + 1)
    expect(new Set(line.legs.map(({ lay }) => lay))).toEqual(new Set(['surface']))
    // 2 · √(221² + 45²) = 451 m along the ground, less what smoothing takes off so sharp a turn.
    expect(measureLine(laid, line).groundM).toBeGreaterThan(435)
    expect(measureLine(laid, line).groundM).toBeLessThan(455)
    expect(layAsWalked(plan, 'nobody', { id: 'f3' }, measureLine)).toBe(plan)
  })
  const walked = (points: readonly (readonly [number, number])[]) =>
    points.map(([lon, lat], k): TrackPoint => [lon, lat, null, new Date(k * 3000).toISOString(), 3])
  /** From one place to another in steps of two metres or so. */
  const straight = (from: readonly [number, number], to: readonly [number, number]) =>
    Array.from({ length: 101 }, (_, k): readonly [number, number] => [
      from[0] + ((to[0] - from[0]) * k) / 100,
      from[1] + ((to[1] - from[1]) * k) / 100,
    ])
  const b = 1 / 1113.1949
  const field = (points: readonly TrackPoint[]) => [
    { id: 'r1', line: 'l1', kind: 'laid', fromM: 0, toM: 1200 },
    { id: 'r2', line: 'l1', kind: 'note', wireM: 600, text: 'at the bend' },
    { id: 'f1', line: 'l1', kind: 'track', points },
  ]
  const south = walked([...straight([0, 0], [b / 2, -0.0025]), ...straight([b / 2, -0.0025], [b, 0])])

  test('keeps its way before in a record, which a further one undoes, and what was recorded where it was', () => {
    const plan = fieldPlan([LINE], { field: field(south) })
    const laid = layAsWalked(plan, 'f1', { id: 'f2', by: 'crew 1' }, measureLine)
    const now = measureLine(laid, laid.lines.get(id)!)
    const standing = (of: typeof plan) => new Map(standingRecords(of).map((record) => [record.id, record]))
    // All of it lay, and all of it lies; what was noted half way is half way.
    expect(standing(laid).get('r1')).toMatchObject({ fromM: 0 })
    expect((standing(laid).get('r1') as { toM: number }).toM).toBeCloseTo(now.wireM, 6)
    expect((standing(laid).get('r2') as { wireM: number }).wireM).toBeCloseTo(now.wireM / 2, -1)
    expect(laid.field!.slice(0, 3)).toEqual(plan.field)
    expect(asPlanned(laid, laid.lines.get(id)!)).toEqual(plan.lines.get(id))
    const read = parsePlan(formatPlan(laid))
    if (!read.ok) throw new Error(read.problems[0]!.message)
    expect(read.value.field).toEqual(laid.field)

    const back = layAsPlanned(laid, 'f2', { id: 'f3' })
    expect(back.lines.get(id)).toEqual(plan.lines.get(id))
    expect(standing(back).get('r1')).toMatchObject({ fromM: 0, toM: 1200 })
    expect(asLaidOf(back, id)).toBeUndefined()
    expect(back.field!.slice(0, 4)).toEqual(laid.field)
    // Noted on the way that was laid, told on the way that was planned.
    const noted = addRecord(laid, { id: 'r4', line: id, kind: 'note', wireM: now.wireM, text: '' })
    if (!noted.ok) throw new Error(noted.problems[0]!.message)
    const told = standing(layAsPlanned(noted.value, 'f2', { id: 'f3' })).get('r4')
    expect((told as { wireM: number }).wireM).toBeCloseTo(1200, 6)
  })
  test('goes on as planned where nobody has walked', () => {
    // From a to the bend in the north alone, by a detour to the west.
    const north = fieldPlan([LINE]).lines.get(id)!.bends[0]!
    const aside = [-0.001, north[1] / 2] as const
    const points = walked([...straight([0, 0], aside), ...straight(aside, [north[0], north[1] * 0.7])])
    const plan = fieldPlan([LINE], { field: field(points) })
    const { bends } = layAsWalked(plan, 'f1', { id: 'f2' }, measureLine).lines.get(id)!
    expect(Math.min(...bends.map(([lon]) => lon))).toBeLessThan(-0.0008)
    expect(bends.at(-1)).toEqual(north)
    // The other way round, from b, it is the beginning that stays.
    const other = fieldPlan([LINE], { field: field(walked(straight([b, 0], [north[0], north[1] * 0.7]))) })
    expect(layAsWalked(other, 'f1', { id: 'f2' }, measureLine).lines.get(id)!.bends[0]).toEqual(north)
  })
  test('takes the slack that its real wire needs, and no less than its way', () => {
    const plan = fieldPlan([LINE])
    const measured = measureLine(plan, plan.lines.get(id)!)
    const result = setUsedWire(plan, id, measured, 1310, { id: 'f1' })
    if (!result.ok) throw new Error(result.problems[0]!.message)
    expect(measureLine(result.value, result.value.lines.get(id)!).wireM).toBeCloseTo(1310, 6)
    expect(setUsedWire(plan, id, measured, 900, { id: 'f1' })).toMatchObject({
      ok: false,
      problems: [{ code: 'no-such-slack' }],
    })
  })
})
