import { expect, test } from 'vitest'
import { addRecord, undoRecord } from '../../src/plan/add-record'
import { recordsOf } from '../../src/plan/field-records'
import type { LineId, StationId } from '../../src/plan/id'
import { addLine, removeLine, reverseLine } from '../../src/plan/line-edits'
import { EMPTY_PLAN, type FieldRecord, type Plan } from '../../src/plan/plan'
import { splitLine } from '../../src/plan/split-line'
import { standingRecords } from '../../src/plan/standing-records'
import { addStation } from '../../src/plan/station-edits'

const l = (id: string) => id as LineId
const s = (id: string) => id as StationId

/** Two stations of Null Island's neighbourhood, and a line between them. */
const drawn = (): Plan => {
  const a = addStation(EMPTY_PLAN, { id: s('a'), name: 'A', position: [0, 0] })
  const b = addStation(a, { id: s('b'), name: 'B', position: [0.01, 0] })
  const line = { id: l('ab'), newCircuitId: 'c' as never, from: s('a'), to: s('b'), bends: [] }
  return addLine(b, { ...line, wire: 'wd-1a', lay: 'surface' })
}

const added = (plan: Plan, ...records: readonly FieldRecord[]): Plan =>
  records.reduce((next, record) => {
    const result = addRecord(next, record)
    if (!result.ok) throw new Error(result.problems[0]!.message)
    return result.value
  }, plan)

const laid = (id: string, fromM: number, toM: number): FieldRecord => ({
  id,
  line: l('ab'),
  kind: 'laid',
  fromM,
  toM,
})

test('records are added, and undone by a further one, which is undone in its turn', () => {
  const two = added(drawn(), laid('f1', 0, 400), laid('f2', 400, 700))
  const undone = undoRecord(two, 'f2', { id: 'f3', at: '2026-11-25T10:00:00Z' })
  expect(recordsOf(undone).map(({ id }) => id)).toEqual(['f1', 'f2', 'f3'])
  expect(standingRecords(undone).map(({ id }) => id)).toEqual(['f1'])
  expect(standingRecords(undoRecord(undone, 'f3', { id: 'f4' })).map(({ id }) => id)).toEqual(['f1', 'f2'])
  expect(undoRecord(two, 'nobody', { id: 'f9' })).toBe(two)
})

test.each([
  ['a stretch that ends before it begins', laid('f1', 800, 700), 'toM'],
  ['a negative place', laid('f1', -1, 700), 'fromM'],
  ['a line that is not there', { ...laid('f1', 0, 700), line: l('xy') }, 'line'],
  ['a time that is none', { ...laid('f1', 0, 700), at: 'yesterday' }, 'at'],
])('%s is refused with its place', (_, record, at) => {
  expect(addRecord(drawn(), record)).toMatchObject({ ok: false, problems: [{ at }] })
})

test('a record of an id that is taken is a slip of the program', () => {
  expect(() => added(drawn(), laid('f1', 0, 1), laid('f1', 0, 2))).toThrow('already')
})

test('a line takes its records with it, and they keep it from being turned round', () => {
  const plan = undoRecord(added(drawn(), laid('f1', 0, 400)), 'f1', { id: 'f2' })
  expect(removeLine(plan, l('ab'))).not.toHaveProperty('field')
  expect(reverseLine(plan, l('ab'))).toBe(plan)
})

test('when a station comes to stand on the wire, each record goes with the half that it is about', () => {
  const reading = { line: l('ab'), kind: 'reading', what: 'loopOhms', value: 50, far: 'short' } as const
  const plan = added(
    drawn(),
    laid('f1', 0, 900),
    { id: 'r1', ...reading, wireM: 300, toward: 'from' },
    { id: 'r2', ...reading, wireM: 300, toward: 'to' },
    { id: 'r3', ...reading, wireM: 900, toward: 'to' },
    { id: 'n1', line: l('ab'), kind: 'note', wireM: 700, text: 'culvert' },
  )
  const station = { id: s('j'), name: 'J', position: [0.005, 0] as const }
  const split = splitLine(plan, { line: l('ab'), leg: 0, station, second: l('jb'), jointM: 600 })
  // Both halves have a tail of 8 m at the joint, as every end has.
  expect(recordsOf(split)).toEqual([
    { ...laid('f1', 0, 608) },
    { ...laid('f1-2', 0, 308), line: 'jb' },
    { id: 'r1', ...reading, wireM: 300, toward: 'from' },
    { id: 'r2', ...reading, wireM: 300, toward: 'to', stale: true },
    { id: 'r3', ...reading, line: 'jb', wireM: 308, toward: 'to' },
    { id: 'n1', line: 'jb', kind: 'note', wireM: 108, text: 'culvert' },
  ])
})
