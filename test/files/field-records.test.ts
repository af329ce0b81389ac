import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'

const demo = JSON.parse(readFileSync('public/demo.plan.geojson', 'utf8'))
const line = demo.features.find(
  (feature: { properties: { kind: string } }) => feature.properties.kind === 'line',
).id as string
const withField = (field: unknown) => JSON.stringify({ ...demo, plan: { ...demo.plan, field } })

const LAID = { id: 'f1', at: '2026-11-25T10:12:00Z', by: 'crew 1', line, kind: 'laid', fromM: 0, toM: 812 }
const READ = {
  ...{ id: 'f2', at: '2026-11-25T10:20:00+01:00', line, kind: 'reading', wireM: 812, toward: 'from' },
  ...{ far: 'short', what: 'loopOhms', value: 112.4, meterPct: 1, tempC: 12, weather: 'wet' },
}
const TRACK = {
  id: 'f3',
  line,
  kind: 'track',
  points: [
    [9.9, 47.1, 812, '2026-11-25T10:00:00Z', 4],
    [9.91, 47.1],
  ],
}
const NOTE = { id: 'f4', line, kind: 'fault', wireM: 640, text: 'wet splice' }
const UNDONE = { id: 'f5', line, kind: 'undone', record: 'f4' }

test('what was laid and read is written back as it came, unknown members too', () => {
  const field = [{ ...LAID, spool: 's1', gloves: true }, READ, TRACK, NOTE, UNDONE]
  const read = parsePlan(withField(field))
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  expect(JSON.parse(formatPlan(read.value)).plan.field).toEqual(field)
  const again = parsePlan(formatPlan(read.value))
  expect(again.ok && again.value).toEqual(read.value)
})

test.each([
  ['no list', { f1: LAID }, 'plan.field'],
  ['no record', [7], 'plan.field[0]'],
  ['a line that is not there', [{ ...LAID, line: 'l99' }], 'plan.field[0].line'],
  ['no line', [{ ...LAID, line: undefined }], 'plan.field[0].line'],
  ['a kind that nobody knows', [{ ...LAID, kind: 'eaten' }], 'plan.field[0].kind'],
  ['a stretch that ends before it begins', [{ ...LAID, fromM: 900 }], 'plan.field[0].toM'],
  ['a negative place', [{ ...LAID, fromM: -1 }], 'plan.field[0].fromM'],
  ['less than no ohms', [{ ...READ, value: -3 }], 'plan.field[0].value'],
  ['a place in words', [{ ...READ, wireM: '812' }], 'plan.field[0].wireM'],
  ['a meter that errs by less than nothing', [{ ...READ, meterPct: -1 }], 'plan.field[0].meterPct'],
  ['a thing that no meter reads', [{ ...READ, what: 'ohms' }], 'plan.field[0].what'],
  ['a time that is none', [{ ...LAID, at: 'noon' }], 'plan.field[0].at'],
  ['an id twice', [LAID, { ...NOTE, id: 'f1' }], 'plan.field[1].id'],
  ['an undone record that is not there', [UNDONE], 'plan.field[0].record'],
  ['a point off the globe', [{ ...TRACK, points: [[9.9, 147.1]] }], 'plan.field[0].points[0]'],
  ['a point of words', [{ ...TRACK, points: [['9.9', 47.1]] }], 'plan.field[0].points[0]'],
])('%s is refused with its place', (_, field, at) => {
  const read = parsePlan(withField(field))
  expect(read.ok ? [] : read.problems.map((problem) => problem.at)).toContain(at)
})
