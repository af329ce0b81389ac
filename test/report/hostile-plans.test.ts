import { expect, test } from 'vitest'
import { parsePlan } from '../../src/files/parse-plan'
import { measurePlan } from '../../src/measure/measure-line'
import type { CircuitId } from '../../src/plan/id'
import type { Plan } from '../../src/plan/plan'
import { remediesFor } from '../../src/report/remedies'
import { reportPlan } from '../../src/report/report-plan'
import { ALL } from '../cases'
import { cpuSeconds } from '../cpu-seconds'

type Place = readonly [lonDeg: number, latDeg: number]

const station = (id: string, coordinates: Place) => ({
  type: 'Feature',
  id,
  properties: { kind: 'station', name: id },
  geometry: { type: 'Point', coordinates },
})

const line = (id: string, from: string, to: string, coordinates: readonly Place[]) => ({
  type: 'Feature',
  id,
  properties: {
    kind: 'line',
    from,
    to,
    wire: 'wd-1a',
    legs: coordinates.slice(1).map(() => ({ lay: 'surface' })),
  },
  geometry: { type: 'LineString', coordinates },
})

function planOf(features: readonly object[], circuits: readonly object[] = []): Plan {
  const plan = { format: 'fieldpair-plan', version: 1, circuits }
  const result = parsePlan(JSON.stringify({ type: 'FeatureCollection', plan, features }))
  if (!result.ok) throw new Error(result.problems[0]!.message)
  return result.value
}

/** A chain of lines some 100 m long. */
function chain(lines: number, sets: (station: number) => string | undefined) {
  const placeOf = (k: number): Place => [10 + k / 1000, 47]
  const stations = Array.from({ length: lines + 1 }, (_, k) => station(`s${k}`, placeOf(k)))
  const runs = Array.from({ length: lines }, (_, k) =>
    line(`l${k}`, `s${k}`, `s${k + 1}`, [placeOf(k), placeOf(k + 1)]),
  )
  const own = stations.flatMap(({ id }, k) => (sets(k) ? [[id, sets(k)] as const] : []))
  const circuit = { id: 'c', lines: runs.map(({ id }) => id), sets: Object.fromEntries(own), supply: null }
  return planOf([...stations, ...runs], [circuit])
}

/** Steps of a kind of work that would grow with the square of the plan are told by its time: eight times the plan, far under 64 times. */
const GENEROUS = 30

test('150,000 bends are a line like any other', () => {
  const bends = Array.from({ length: 150_000 }, (_, k): Place => [10 + k * 1e-5, 47 + (k % 2) * 1e-5])
  const plan = planOf([station('a', bends[0]!), station('b', bends.at(-1)!), line('l', 'a', 'b', bends)])
  const report = reportPlan(plan)
  expect(report.lines[0]!.legs).toHaveLength(149_999)
  expect(report.spools[0]!.splices).toBeGreaterThan(50)
})

test('a line round half the earth is laid and spliced like any other', () => {
  const plan = planOf([
    station('a', [10, 47]),
    station('b', [10.1, 47]),
    line('l', 'a', 'b', [
      [10, 47],
      [-170, 40],
      [10.1, 47],
    ]),
  ])
  expect(reportPlan(plan).lines[0]!.mapM).toBeGreaterThan(1e7)
})

/** The time that they take grows with them: fewer tell as much of how. */
const MANY = ALL ? 20_000 : 4000
const FEW = MANY / 8

test(`${MANY} lines take no square of the time that ${FEW} take, with all of them laid`, () => {
  const ends = (last: number) => (k: number) => (k === 0 || k === last ? 'crank-1600' : undefined)
  const [few, many] = [chain(FEW, ends(FEW)), chain(MANY, ends(MANY))]
  reportPlan(few)
  const small = cpuSeconds(() => reportPlan(chain(FEW, ends(FEW))))
  const large = cpuSeconds(() => {
    const report = reportPlan(many)
    expect(report.spools[0]!.missingM).toBe(0)
    expect(report.lines.every(({ pieces }) => pieces.length > 0)).toBe(true)
  })
  expect(large / small).toBeLessThan(GENEROUS)
})

test('a circuit of 400 sets has every row, and no search for remedies that would take minutes', () => {
  const plan = chain(399, () => 'crank-1600')
  const report = reportPlan(plan)
  expect(report.circuits[0]!.voice).toHaveLength(400 * 399)
  expect(remediesFor(plan, 'c' as CircuitId, measurePlan(plan))).toEqual([])
})
