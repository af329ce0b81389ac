import { expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { isSame } from '../../src/journal/canonical'
import { type Edit, idOf, standing } from '../../src/journal/edit'
import type { Journal } from '../../src/journal/journal'
import { journalOf, stateOf, takeState } from '../../src/journal/journal-state'
import { placeOf } from '../../src/journal/keys'
import { todaysCases } from '../cases'
import { type History, randomHistory } from './histories'

/** `HISTORY_STEPS=60 CASES=4 ALL=1` tries longer ones, and more of them. */
const STEPS = Number(process.env.HISTORY_STEPS ?? 20)
const CARRIED = todaysCases(60, 6).map((index) => index + 1)
const SHARED = todaysCases(500, 8).map((index) => index + 1)

/** A state as a file carries it. */
const carried = (journal: Journal) => JSON.parse(JSON.stringify(stateOf(journal))) as unknown

test(`${CARRIED.length} random histories come together by what their files carry alone`, () => {
  for (const seed of CARRIED) {
    const { hands } = randomHistory(seed, Math.max(STEPS, 40), false)
    const journals = hands.map(({ journal }) => {
      const opened = journalOf(journal.mended().plan, carried(journal))
      if (typeof opened === 'string') throw new Error(opened)
      expect(formatPlan(opened.mended().plan), `history ${seed}`).toBe(formatPlan(journal.mended().plan))
      return opened
    })
    for (const journal of journals) for (const { journal: other } of hands) takeState(journal, carried(other))
    const [first, ...others] = journals.map((journal) => formatPlan(journal.mended().plan))
    // What waits for a choice is the same to all as well: nothing that was overwritten comes back beside what took its place.
    const [torn, ...othersTorn] = journals.map((journal) =>
      journal.torn().map(({ key, edits }) => [key, ...edits.map(idOf).sort()]),
    )
    for (const other of othersTorn) expect(other, `history ${seed}`).toEqual(torn)
    for (const other of others) expect(other, `history ${seed}`).toBe(first)
    expect(parsePlan(first!).ok, `history ${seed}`).toBe(true)
  }
}, 600_000)

test(`${SHARED.length} random histories of 2 to 8 hands come together, lose nothing of one hand alone, and read`, () => {
  for (const seed of SHARED) {
    const history = randomHistory(seed, STEPS)
    expect(faultsOf(history), `history ${seed}`).toEqual([])
  }
}, 3_600_000)

function faultsOf({ hands, edits, trespasses }: History): readonly string[] {
  const faults = [...trespasses.map((key) => `undo took back ${key} of another`)]
  const [first, ...others] = hands.map(({ journal }) => ({
    text: formatPlan(journal.mended().plan),
    told: JSON.stringify([
      journal.mended().mended,
      journal.torn().map(({ key, edits: [holds, ...rest] }) => [key, idOf(holds!), rest.map(idOf).sort()]),
    ]),
  }))
  if (others.some(({ text }) => text !== first!.text)) faults.push('plans differ')
  if (others.some(({ told }) => told !== first!.told)) faults.push('what is told differs')
  const read = parsePlan(first!.text)
  if (!read.ok) faults.push(...read.problems.map(({ at, message }) => `${at} ${message}`))
  else if (formatPlan(read.value) !== first!.text) faults.push('reads as another plan')
  const { journal } = hands[0]!
  const byKey = new Map<string, Edit[]>()
  for (const edit of edits) byKey.set(edit.key, [...(byKey.get(edit.key) ?? []), edit])
  for (const [key, own] of byKey) {
    const { hand } = own[0]!
    if (own.some((each) => each.hand !== hand)) continue
    const last = own.reduce((a, b) => (a.number > b.number ? a : b))
    if (!isSame(standing(journal.things.edits(key))?.value, last.value)) faults.push(`${key} is lost`)
    const { kind, id, member } = placeOf(key)!
    if (member === '' && last.value !== undefined && !journal.things.isThere(kind, id))
      faults.push(`${key} is not there`)
  }
  return faults
}
