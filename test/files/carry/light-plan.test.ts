import { describe, expect, test } from 'vitest'
import { handedOn, kinshipOf } from '../../../src/files/carry/kinship'
import { completed, lightened } from '../../../src/files/carry/light-plan'
import { packPlan, unpackPlan } from '../../../src/files/carry/pack-plan'
import { formatPlan } from '../../../src/files/format-plan'
import { parsePlan } from '../../../src/files/parse-plan'
import { mergePlans } from '../../../src/journal/merge-plans'
import { addRecord, undoRecord } from '../../../src/plan/add-record'
import { recordsOf } from '../../../src/plan/field-records'
import type { FieldRecord, Plan } from '../../../src/plan/plan'
import { setTitle } from '../../../src/plan/text-edits'
import type { Result } from '../../../src/problem'
import { fieldPlan } from '../../field/field-plan'

const got = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems[0]!.message)
  return result.value
}
const recorded = (plan: Plan, ...records: readonly object[]): Plan =>
  records.reduce<Plan>(
    (before, record) => got(addRecord(before, { line: 'l1', ...record } as FieldRecord)),
    plan,
  )
const byCodes = (plan: Plan): Plan => got(unpackPlan(packPlan(lightened(handedOn(plan)).plan)))
const byFile = (plan: Plan): Plan => got(parsePlan(formatPlan(handedOn(plan))))
const idsOf = (plan: Plan) => recordsOf(plan).map(({ id }) => id)

const PHOTO = `data:image/jpeg;base64,${'A'.repeat(4000)}`
const POINTS = Array.from({ length: 400 }, (_, k) => [k * 1e-6, 0, null, '2026-11-25T10:12:00Z', 5])
const BASE = recorded(
  fieldPlan([{ id: 'l1', from: 'a', to: 'b', wireM: 1200 }]),
  { id: 'b1', kind: 'laid', fromM: 0, toM: 400 },
  { id: 'b2', kind: 'note', wireM: 300, text: 'gate', photo: PHOTO },
  { id: 'b3', kind: 'track', points: POINTS },
)

describe('a phone and the base', () => {
  const phone = (plan: Plan) =>
    recorded(
      plan,
      { id: 'p1', at: '2026-11-25T10:00:00Z', kind: 'laid', fromM: 400, toM: 900, spool: 's2' },
      { id: 'p2', at: '2026-11-25T10:05:00Z', kind: 'fault', wireM: 640, text: 'cut', photo: PHOTO },
      { id: 'p3', at: '2026-11-25T10:06:00Z', kind: 'track', points: POINTS },
    )
  const base = (plan: Plan) =>
    undoRecord(
      recorded(setTitle(plan, 'Changed meanwhile'), {
        id: 'b4',
        at: '2026-11-25T10:01:00Z',
        kind: 'tested',
        fromM: 0,
        toM: 400,
      }),
      'b1',
      { id: 'b5' },
    )

  test.each([
    ['out and back by file', byFile, byFile],
    ['out by codes, back by file', byCodes, byFile],
  ])('%s: the two merge, and nothing is lost either way', (_, out, back) => {
    const mine = base(BASE)
    const came = back(phone(out(BASE)))
    const theirs = completed(came, mine)
    const kinship = kinshipOf(mine, theirs, [BASE])
    if (kinship.is !== 'both changed' || !kinship.base) throw new Error(kinship.is)
    const { plan, conflicts } = mergePlans(kinship.base, mine, theirs)
    expect(conflicts).toEqual([])
    expect(plan.title).toBe('Changed meanwhile')
    expect(new Set(idsOf(plan))).toEqual(new Set(['b1', 'b2', 'b3', 'b4', 'b5', 'p1', 'p2', 'p3']))
    expect(idsOf(plan)).toHaveLength(8)
    for (const record of [...recordsOf(mine), ...recordsOf(phone(BASE))])
      expect(recordsOf(plan)).toContainEqual(record)
    expect(got(parsePlan(formatPlan(plan))).field).toEqual(plan.field)
  })
  test('back by codes: all but the phone’s own picture and track comes, and what the base has stays', () => {
    const came = byCodes(phone(byCodes(BASE)))
    const theirs = completed(came, BASE)
    expect(kinshipOf(BASE, theirs, [BASE])).toEqual({ is: 'newer' })
    expect(new Set(idsOf(theirs))).toEqual(new Set(['b1', 'b2', 'b3', 'p1', 'p2']))
    for (const record of recordsOf(BASE)) expect(recordsOf(theirs)).toContainEqual(record)
    expect(recordsOf(theirs).find(({ id }) => id === 'p2')).not.toHaveProperty('photo')
    // With the file that comes later, the rest is there too.
    const later = completed(byFile(phone(byCodes(BASE))), theirs)
    expect(new Set(idsOf(mergePlans(BASE, theirs, later).plan))).toEqual(
      new Set(['b1', 'b2', 'b3', 'p1', 'p2', 'p3']),
    )
  })
})

test('a plan goes light by codes, says so, and is whole by file', () => {
  const { plan, pictures, tracks } = lightened(undoRecord(BASE, 'b3', { id: 'b4' }))
  expect([pictures, tracks]).toEqual([1, 1])
  expect(idsOf(plan)).toEqual(['b1', 'b2'])
  expect(packPlan(plan).length).toBeLessThan(packPlan(BASE).length / 2)
  expect(byFile(BASE).field).toEqual(BASE.field)
  expect(
    lightened(fieldPlan([{ id: 'l1', from: 'a', to: 'b', wireM: 1200 }])).plan.unknown?.plan,
  ).toBeUndefined()
  expect(completed(BASE, plan)).toBe(BASE)
})
