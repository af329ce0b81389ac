import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { changedVerdicts, mergePlans } from '../../src/journal/merge-plans'
import { addRecord, undoRecord } from '../../src/plan/add-record'
import { setSet } from '../../src/plan/circuit-edits'
import { recordsOf } from '../../src/plan/field-records'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { addLine, removeLine, setPairs, setWire } from '../../src/plan/line-edits'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import {
  addStation,
  moveStation,
  noteStation,
  removeStation,
  renameStation,
} from '../../src/plan/station-edits'
import { setTitle } from '../../src/plan/text-edits'
import { cases } from '../cases'
import { type Step, steps, takeStep } from '../plan/random-edits'

const walk = (plan: Plan, steps: readonly Step[], hand: string): Plan =>
  steps.reduce((next, step, k) => takeStep(next, step, `${hand}${k}`), plan)

const reread = (plan: Plan) => parsePlan(formatPlan(plan))

const RUNS = cases(50)

describe('merging what two random hands did', () => {
  const histories = fc.tuple(steps(20, 60), steps(1, 25), steps(1, 25))
  test('gives a plan that reads, the same whichever hand is called mine, and nothing is lost that one alone changed', () => {
    fc.assert(
      fc.property(histories, ([before, first, second]) => {
        const base = walk(EMPTY_PLAN, before, 'b')
        const mine = walk(base, first, 'm')
        const theirs = walk(base, second, 't')
        const merged = mergePlans(base, mine, theirs)
        const read = reread(merged.plan)
        expect(read.ok ? [] : read.problems).toEqual([])
        expect(formatPlan(mergePlans(base, theirs, mine).plan)).toBe(formatPlan(merged.plan))
        expect(mergePlans(base, theirs, mine).conflicts.map(({ where, kept }) => ({ where, kept }))).toEqual(
          merged.conflicts.map(({ where, kept }) => ({ where, kept })),
        )
        expectKept(base, mine, theirs, merged.plan)
        expectKept(base, theirs, mine, merged.plan)
      }),
      { numRuns: RUNS },
    )
  }, 120_000)
  test('with a hand that did nothing is what the other did', () => {
    fc.assert(
      fc.property(histories, ([before, first]) => {
        const base = walk(EMPTY_PLAN, before, 'b')
        const mine = walk(base, first, 'm')
        const { plan, conflicts, mended } = mergePlans(base, mine, base)
        expect([conflicts, mended]).toEqual([[], []])
        expect(plan).toEqual(mine)
      }),
      { numRuns: 50 },
    )
  })
})

/** Each register of a station, a hazard or the settings that this hand alone changed stands in the merged plan as it set it. */
function expectKept(base: Plan, hand: Plan, other: Plan, merged: Plan): void {
  for (const [id, station] of hand.stations) {
    const [before, beside] = [base.stations.get(id), other.stations.get(id)]
    for (const member of ['name', 'note', 'position'] as const) {
      const alone = before && beside && before[member] === beside[member]
      if (alone && station[member] !== before[member])
        expect(merged.stations.get(id)?.[member]).toEqual(station[member])
    }
    if (!before) expect(merged.stations.has(id)).toBe(true)
  }
  // No record that a hand added is ever lost.
  const records = recordsOf(merged).map(({ id }) => id)
  const known = new Set(recordsOf(base).map(({ id }) => id))
  for (const { id } of recordsOf(hand)) if (!known.has(id)) expect(records).toContain(id)
  for (const id of hand.lines.keys()) if (!base.lines.has(id)) expect(merged.lines.has(id)).toBe(true)
  for (const [id, line] of hand.lines) {
    const [before, beside] = [base.lines.get(id), other.lines.get(id)]
    if (before && beside && before.wire === beside.wire) expect(merged.lines.get(id)?.wire).toBe(line.wire)
  }
  for (const id of hand.hazards.keys()) if (!base.hazards.has(id)) expect(merged.hazards.has(id)).toBe(true)
  for (const member of ['title', 'note', 'weather', 'wireTempC'] as const)
    if (base[member] === other[member]) expect(merged[member]).toBe(hand[member])
}

const S = (id: string) => id as StationId
const L = (id: string) => id as LineId

/** A – B, a line with its circuit, and C apart. */
const base = (() => {
  let plan = EMPTY_PLAN
  for (const [k, id] of ['a', 'b', 'c'].entries())
    plan = addStation(plan, { id: S(id), name: id.toUpperCase(), position: [10 + k / 100, 47] })
  return addLine(plan, {
    id: L('ab'),
    newCircuitId: 'net' as CircuitId,
    from: S('a'),
    to: S('b'),
    bends: [],
    wire: 'wd-1a',
    lay: 'surface',
  })
})()

const draw = (plan: Plan, id: string, from: string, to: string) =>
  addLine(plan, {
    id: L(id),
    newCircuitId: `${id}-net` as CircuitId,
    from: S(from),
    to: S(to),
    bends: [],
    wire: 'wd-1a',
    lay: 'surface',
  })

test('a station taken out while a line was drawn to it stays, and it is told', () => {
  const mine = removeStation(base, S('c'))
  const theirs = draw(base, 'bc', 'b', 'c')
  const { plan, mended } = mergePlans(base, mine, theirs)
  expect(plan.stations.has(S('c'))).toBe(true)
  expect(plan.lines.has(L('bc'))).toBe(true)
  expect(mended.join(' ')).toContain('C was taken out while a line was led to it; it stays.')
})

test('a line taken out while the other gave it another wire stays', () => {
  const { plan, mended } = mergePlans(base, removeLine(base, L('ab')), setWire(base, L('ab'), 'wd-36'))
  expect(plan.lines.get(L('ab'))?.wire).toBe('wd-36')
  expect(mended).toHaveLength(1)
})

test('two names for one station are a conflict with both; of them the same one is kept either way', () => {
  const mine = renameStation(base, S('c'), 'Camp')
  const theirs = renameStation(base, S('c'), 'Ford')
  const { plan, conflicts } = mergePlans(base, mine, theirs)
  const kept = plan.stations.get(S('c'))!.name
  expect(['Camp', 'Ford']).toContain(kept)
  expect(conflicts).toEqual([{ where: 'stations/c/name', base: 'C', mine: 'Camp', theirs: 'Ford', kept }])
  expect(mergePlans(base, theirs, mine).plan).toEqual(plan)
})

test('edits of different members of one thing are both kept', () => {
  const mine = noteStation(moveStation(base, S('a'), [10.5, 47.5]), S('b'), 'by the gate')
  const theirs = setTitle(renameStation(base, S('a'), 'Camp'), 'Both')
  const { plan, conflicts } = mergePlans(base, mine, theirs)
  expect(conflicts).toEqual([])
  expect(plan.stations.get(S('a'))).toMatchObject({ name: 'Camp', position: [10.5, 47.5] })
  expect(plan.stations.get(S('b'))?.note).toBe('by the gate')
  expect(plan.title).toBe('Both')
})

test('two things that were made under one id become two', () => {
  const mine = addStation(base, { id: S('d'), name: 'Mill', position: [10.2, 47.2] })
  const theirs = draw(
    addStation(base, { id: S('d'), name: 'Quarry', position: [10.4, 47.4] }),
    'da',
    'd',
    'a',
  )
  const { plan } = mergePlans(base, mine, theirs)
  expect([...plan.stations.values()].map(({ name }) => name).sort()).toEqual([
    'A',
    'B',
    'C',
    'Mill',
    'Quarry',
  ])
  expect(plan.stations.get(plan.lines.get(L('da'))!.from)?.name).toBe('Quarry')
})

test('two circuits that both hands led over one pair bring a second pair', () => {
  const over = (id: string): Plan => ({
    ...base,
    circuits: new Map(base.circuits).set(id as CircuitId, {
      id: id as CircuitId,
      name: id,
      lines: [L('ab')],
      sets: new Map(),
      supply: null,
    }),
  })
  const wide = (plan: Plan) => {
    const result = setPairs(plan, L('ab'), 2)
    return 'ok' in result ? (result.ok ? result.value : plan) : result
  }
  const { plan, mended } = mergePlans(base, wide(over('one')), wide(over('two')))
  expect(plan.lines.get(L('ab'))?.pairs).toBe(3)
  expect(mended.join()).toContain('3 pairs')
})

test('verdicts that the merge changes are named', () => {
  const net = 'net' as CircuitId
  const withSet = (plan: Plan, station: string) => setSet(plan, net, S(station), 'crank-1600')
  const [mine, theirs] = [withSet(base, 'a'), withSet(base, 'b')]
  // One telephone alone is no circuit; the two together ring each other over a kilometre.
  expect(changedVerdicts(mine, theirs, mergePlans(base, mine, theirs).plan)).toEqual([
    { circuit: 'net', mine: 'fails', theirs: 'fails', merged: 'works' },
  ])
})

describe('records of two hands', () => {
  const base = (() => {
    const a = addStation(EMPTY_PLAN, { id: 'a' as StationId, name: 'A', position: [9, 47] })
    const b = addStation(a, { id: 'b' as StationId, name: 'B', position: [9.01, 47] })
    const line = { id: 'ab' as LineId, newCircuitId: 'c' as CircuitId, from: 'a' as StationId }
    return addLine(b, { ...line, to: 'b' as StationId, bends: [], wire: 'wd-1a', lay: 'surface' })
  })()
  const laid = (plan: Plan, id: string, toM: number): Plan => {
    const stretch = { kind: 'laid', fromM: 0, toM, line: 'ab' as LineId } as const
    const result = addRecord(plan, { id, ...stretch })
    if (!result.ok) throw new Error(result.problems[0]!.message)
    return result.value
  }
  test('that were given one id by both are two, and what undid one of them still undoes that one', () => {
    const mine = undoRecord(laid(base, 'f1', 400), 'f1', { id: 'f2' })
    const { plan, conflicts } = mergePlans(base, mine, laid(base, 'f1', 700))
    expect(conflicts).toEqual([])
    expect(recordsOf(plan)).toHaveLength(3)
    const undone = recordsOf(plan).find((record) => record.kind === 'undone')
    expect(recordsOf(plan).find(({ id }) => id === undone?.record)).toMatchObject({ toM: 400 })
  })
  test('bring back the line that the other hand took out', () => {
    const { plan, mended } = mergePlans(base, removeLine(base, 'ab' as LineId), laid(base, 'f1', 400))
    expect(plan.lines.has('ab' as LineId)).toBe(true)
    expect(recordsOf(plan)).toHaveLength(1)
    expect(mended[0]).toMatch(/something was recorded/)
  })
  test('go with a line that one hand took out and the other left alone', () => {
    const before = laid(base, 'f1', 400)
    const { plan } = mergePlans(before, removeLine(before, 'ab' as LineId), before)
    expect([plan.lines.size, recordsOf(plan).length]).toEqual([0, 0])
  })
})
