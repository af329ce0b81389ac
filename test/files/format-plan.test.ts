import { expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import type { LineId, StationId } from '../../src/plan/id'
import { moveStation } from '../../src/plan/station-edits'
import { planOf, QUARRY_TEXT, quarryNet } from './quarry-net'

test('a file in the stable order is written back to the letter, unknown members and all', () => {
  expect(formatPlan(quarryNet())).toBe(QUARRY_TEXT)
})

test('a bare plan is filled from the defaults', () => {
  const bare = { type: 'FeatureCollection', plan: { format: 'fieldpair-plan', version: 1 }, features: [] }
  const { plan } = JSON.parse(formatPlan(planOf(JSON.stringify(bare))))
  expect(plan).toEqual({
    format: 'fieldpair-plan',
    version: 1,
    title: 'New plan',
    note: '',
    weather: 'dry',
    wireTempC: 20,
    allowances: {
      slackPct: { surface: 20, overhead: 3, buried: 5, water: 15 },
      sagPct: 2,
      tailM: 8,
      spliceWasteM: 0.5,
      reservePct: 10,
    },
    catalog: { wires: [], sets: [], supplies: [] },
    circuits: [],
    stock: [],
  })
})

test('members in another order, and spaces, make no other plan', () => {
  const turned = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(turned)
    if (typeof value !== 'object' || value === null) return value
    return Object.fromEntries(
      Object.entries(value)
        .reverse()
        .map(([name, each]) => [name, turned(each)]),
    )
  }
  const other = planOf(JSON.stringify(turned(JSON.parse(QUARRY_TEXT))))
  expect(other).toEqual(quarryNet())
})

test('an end vertex within 5 m of its station becomes the station, and keeps the elevation it had', () => {
  const file = JSON.parse(QUARRY_TEXT)
  const line = file.features.find((feature: { id: unknown }) => feature.id === 'l1')
  // 0.00002° of latitude are 2.2 m.
  line.geometry.coordinates[0] = [-20.1, 47.30002, 29]
  const plan = planOf(JSON.stringify(file))
  const again = JSON.parse(formatPlan(plan))
  const written = again.features.find((feature: { id: unknown }) => feature.id === 'l1')
  expect(written.geometry.coordinates[0]).toEqual([-20.1, 47.3, 29])
})

test('a station that moves takes its lines along, and leaves their old elevation there behind', () => {
  const plan = moveStation(quarryNet(), 'gate' as StationId, [-20.11, 47.31])
  const file = JSON.parse(formatPlan(plan))
  const written = file.features.find((feature: { id: unknown }) => feature.id === 'l1')
  expect(written.geometry.coordinates[0]).toEqual([-20.11, 47.31])
  expect(plan.lines.get('l1' as LineId)?.endElevationsM).toBeUndefined()
})

test('figures of the work are written where they differ from the usual ones, with members of other programs', () => {
  const file = JSON.parse(QUARRY_TEXT)
  file.plan.work = { talkMinutesPerDay: 60 }
  expect(formatPlan(planOf(JSON.stringify(file)))).toBe(QUARRY_TEXT)
  file.plan.work = { shift: 'night', talkMinutesPerDay: 240 }
  const plan = planOf(JSON.stringify(file))
  expect(plan.work).toEqual({ talkMinutesPerDay: 240, unknown: { shift: 'night' } })
  const again = formatPlan(plan)
  expect(JSON.stringify(JSON.parse(again).plan.work)).toBe('{"talkMinutesPerDay":240,"shift":"night"}')
  expect(planOf(again)).toEqual(plan)
})

test('long whole numbers, great numbers and the order of unknown members come back as they were', () => {
  const odd =
    '{\n "b": 9007199254740993, "2": -12345678901234567890, "a": [1e400, 0.5], "10": { "z": 1, "3": "4" }, "1": 1.25 }'
  const text = QUARRY_TEXT.replace('"lay": "overhead"', `"lay": "overhead", "odd": ${odd}`)
    .replace('"kgPerKm":', `"odd": ${odd}, "kgPerKm":`)
    .replace('"features": [', `"features": [ { "type": "Feature", "odd": ${odd} },`)
    .replace('"weather":', `"odd": ${odd}, "weather":`)
  const again = formatPlan(planOf(text))
  const plain = odd.replace(/\s/g, '')
  expect(again.replace(/\s/g, '').split(plain)).toHaveLength(5)
  expect(formatPlan(planOf(again))).toBe(again)
  expect(planOf(again).circuits).toEqual(quarryNet().circuits)
})
