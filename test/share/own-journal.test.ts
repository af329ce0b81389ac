import 'fake-indexeddb/auto'
import { expect, test } from 'vitest'
import { formatWithElevations, takeElevationsOut } from '../../src/files/carried-elevations'
import { takeJournalOut } from '../../src/files/carried-journal'
import { packPlan } from '../../src/files/carry/pack-plan'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { planFingerprint } from '../../src/files/plan-fingerprint'
import { stateOf, takeState } from '../../src/journal/journal-state'
import type { StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { addStation, renameStation } from '../../src/plan/station-edits'
import { setNote, setTitle } from '../../src/plan/text-edits'
import { headsOf, kinshipByJournal } from '../../src/share/kinship-by-journal'
import { ownJournal } from '../../src/share/own-journal'

const base = addStation(
  { ...EMPTY_PLAN, title: 'Begun' },
  { id: 'a' as StationId, name: 'A', position: [10, 47] },
)
const named = (name: string) => (plan: Plan) => renameStation(plan, 'a' as StationId, name)
let browsers = 0

/** A browser with a plan on its table. */
function browser(plan: Plan) {
  const table = {
    now: plan,
    docs: 1,
    settled: { peek: () => table.now },
    open: (next: Plan) => {
      table.now = next
      table.docs += 1
    },
    received: { value: null as { readonly plan: Plan } | null },
    notice: { value: '' },
  }
  const own = ownJournal(table, `journals-${browsers++}`, () => `doc-${table.docs}`)
  const edit = (change: (plan: Plan) => Plan) => {
    table.now = change(table.now)
  }
  return { table, own, edit }
}
const read = (text: string): Plan => {
  const plan = parsePlan(text)
  if (!plan.ok) throw new Error('it does not read')
  return plan.value
}

test('two copies of one file, edited apart, come together with no base', async () => {
  const [one, two] = [browser(base), browser(EMPTY_PLAN)]
  const file = formatPlan(await one.own.filePlan())
  expect(await two.own.takeFile(read(file))).toBe(true)
  expect(formatPlan(two.table.now)).toBe(formatPlan(base))
  one.edit(named('Camp'))
  two.edit((plan) => setNote(named('Ford')(plan), 'seen'))
  const theirs = read(formatPlan(await two.own.filePlan()))
  // It is of the plan on the table: it waits beside it, and nothing is laid over anything.
  expect(await one.own.takeFile(theirs)).toBe(true)
  expect(one.table.received.value?.plan).toBe(theirs)
  const mine = (await one.own.upToNow(false))!
  const other = takeJournalOut(theirs).journal!
  expect(kinshipByJournal(mine, other)).toBe('both changed')
  takeState(mine, stateOf(other))
  expect(mine.mended().plan.note).toBe('seen')
  expect(mine.torn().map(({ key, edits }) => [key, edits.map(({ value }) => value).sort()])).toEqual([
    ['stations/a/name', ['Camp', 'Ford']],
  ])
})

test('newer, older and the same are sure, hand over hand', async () => {
  const [one, two] = [browser(base), browser(EMPTY_PLAN)]
  await two.own.takeFile(read(formatPlan(await one.own.filePlan())))
  two.edit(named('Ford'))
  const [mine, theirs] = [(await one.own.upToNow(false))!, (await two.own.upToNow(false))!]
  expect(kinshipByJournal(mine, theirs)).toBe('newer')
  expect(kinshipByJournal(theirs, mine)).toBe('older')
  expect(kinshipByJournal(theirs, theirs)).toBe('same')
  const another = (await browser(base).own.upToNow(true))!
  expect(kinshipByJournal(mine, another)).toBeUndefined()
})

test('what has no room for the journal bears how far each hand had come, in under 150 bytes, and the same fingerprint', async () => {
  const one = browser(base)
  formatPlan(await one.own.filePlan())
  one.edit(named('Camp'))
  const plan = await one.own.carried(one.table.now, () => false)
  expect(packPlan(plan).length - packPlan(one.table.now).length).toBeLessThan(150)
  expect(planFingerprint(plan)).toBe(planFingerprint(one.table.now))
  const heads = headsOf(read(formatPlan(plan)))!
  expect(kinshipByJournal((await one.own.upToNow(false))!, heads)).toBe('same')
  const whole = await one.own.carried(one.table.now, () => true)
  expect(takeJournalOut(read(formatPlan(whole))).journal).not.toBeNull()
})

test('a plan that never went out has no journal, and one that was edited by another program opens without it', async () => {
  const [one, two] = [browser(base), browser(EMPTY_PLAN)]
  expect(await one.own.upToNow(false)).toBeNull()
  const text = formatPlan(await one.own.filePlan()).replace(
    '"title": "Begun"',
    '"title": "By another program"',
  )
  expect(await two.own.takeFile(read(text))).toBe(false)
  expect(two.table.notice.value).toMatch(/no longer fits/)
})

test('a file that takes its elevations along takes its journal along too, and a copy that was edited merges by it', async () => {
  const [one, two] = [browser(base), browser(EMPTY_PLAN)]
  const grid = {
    ...{ name: 'N47E010.hgt', crs: { kind: 'geographic' as const }, columns: 2, rows: 2 },
    transform: { x0: 10, xPerColumn: 0.1, xPerRow: 0, y0: 47, yPerColumn: 0, yPerRow: -0.1 },
    heights: Int16Array.of(800, 801, 802, 803),
  }
  const opened = takeElevationsOut(read(await formatWithElevations(await one.own.filePlan(), [grid])))
  expect(opened.grids).toHaveLength(1)
  expect(await two.own.takeFile(opened.plan)).toBe(true)
  expect([two.table.notice.value, formatPlan(two.table.now)]).toEqual(['', formatPlan(base)])
  two.edit(named('Ford'))
  const [mine, theirs] = [(await one.own.upToNow(false))!, (await two.own.upToNow(false))!]
  expect(kinshipByJournal(mine, theirs)).toBe('newer')
})

test('the journal outlasts the page, and an edit is written once however often it is asked for', async () => {
  const one = browser(base)
  formatPlan(await one.own.filePlan())
  one.edit((plan) => setTitle(plan, 'Gone on'))
  const [first, again] = [(await one.own.upToNow(false))!, (await one.own.upToNow(false))!]
  expect([...again.seen]).toEqual([...first.seen])
  expect([...first.seen.values()]).toEqual([1])
})
