import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { runMerge } from '../../src/command/merge-command'
import { formatWithJournal, takeJournalOut } from '../../src/files/carried-journal'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { Journal } from '../../src/journal/journal'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { setWeather } from '../../src/plan/settings-edits'
import { setNote, setTitle } from '../../src/plan/text-edits'

const demo = readFileSync('public/demo.plan.geojson', 'utf8')

async function run(files: Readonly<Record<string, string>>, ...args: readonly string[]) {
  const written = new Map<string, string>()
  const printed = { out: '', err: '' }
  const code = await runMerge(args, {
    readBytes: async (path) => {
      if (!(path in files)) throw new Error('no such file')
      return new TextEncoder().encode(files[path])
    },
    write: async (path, content) => {
      written.set(path, String(content))
    },
    out: (text) => {
      printed.out += text
    },
    err: (text) => {
      printed.err += text
    },
  })
  return { code, written, ...printed }
}

const titled = (title: string) => {
  const file = JSON.parse(demo)
  file.plan.title = title
  return JSON.stringify(file)
}

test('prints conflicts, mendings and changed verdicts, and writes a plan that reads', async () => {
  const files = { base: demo, mine: titled('Mine'), theirs: titled('Theirs') }
  const { code, out, written } = await run(files, 'base', 'mine', 'theirs', '--out', 'out')
  expect(code).toBe(0)
  const answer = JSON.parse(out)
  expect(answer.conflicts).toMatchObject([{ where: 'title', mine: 'Mine', theirs: 'Theirs', kept: 'Theirs' }])
  expect(answer).toMatchObject({ mended: [], verdicts: [] })
  expect(parsePlan(written.get('out')!).ok).toBe(true)
})

test('the merge of three times the same plan is that plan, to the letter', async () => {
  const files = { base: demo, mine: demo, theirs: demo }
  const { written } = await run(files, 'base', 'mine', 'theirs', '--out', 'out')
  const read = parsePlan(demo)
  expect(written.get('out')).toBe(read.ok && formatPlan(read.value))
})

test.each([
  ['a file that is no plan', ['base', 'bad', 'mine', '--out', 'out'], /^bad: /],
  ['a file that is not there', ['base', 'mine', 'gone', '--out', 'out'], /gone: cannot be read/],
  ['two files', ['base', 'mine', '--out', 'out'], /name three plan files/],
  ['no place for the merged plan', ['base', 'mine', 'mine'], /say where/],
])('%s is refused with a sentence, and nothing is written', async (_, args, sentence) => {
  const { code, out, err, written } = await run({ base: demo, mine: demo, bad: '{}' }, ...args)
  expect([code, out, written.size]).toEqual([2, '', 0])
  expect(err).toMatch(sentence)
})

describe('files that carry the journal of one plan', () => {
  const read = parsePlan(demo)
  const plan = read.ok ? read.value : EMPTY_PLAN
  /** What two hands made of the demo; each has its own journal. */
  const hand = (name: string, clockMs: number, change: (before: Plan) => Plan) => {
    const journal = new Journal('one', plan)
    journal.write(name, plan, change(plan), clockMs)
    return formatWithJournal(journal.mended().plan, journal)
  }
  const mine = hand('m', 100, (before) => setNote(setTitle(before, 'Mine'), 'of mine'))
  const theirs = hand('t', 200, (before) => setWeather(setTitle(before, 'Aught'), 'wet'))
  test('are merged by it, the later of two holds, and the merged file carries it on', async () => {
    const there = await run({ base: demo, mine, theirs }, 'base', 'mine', 'theirs', '--out', 'out')
    const back = await run({ base: demo, mine, theirs }, 'base', 'theirs', 'mine', '--out', 'out')
    expect(JSON.parse(there.out).conflicts).toMatchObject([
      { where: 'title', mine: 'Mine', theirs: 'Aught', kept: 'Aught' },
    ])
    const merged = [there, back].map(({ written }) => {
      const file = parsePlan(written.get('out')!)
      return takeJournalOut(file.ok ? file.value : EMPTY_PLAN)
    })
    expect(merged[0]!.plan).toMatchObject({ title: 'Aught', note: 'of mine', weather: 'wet' })
    expect(formatPlan(merged[1]!.plan)).toBe(formatPlan(merged[0]!.plan))
    expect(Object.fromEntries(merged[0]!.journal!.seen)).toEqual({ m: 2, t: 2 })
  })
  test('open without it where another program has changed the plan, or it is nonsense, and say so', () => {
    const changed = mine.replace('of mine', 'of another')
    const nonsense = JSON.stringify({ ...JSON.parse(mine), journal: { seen: 7 } })
    for (const text of [changed, nonsense]) {
      const file = parsePlan(text)
      expect(file.ok && takeJournalOut(file.value)).toMatchObject({ journal: null })
      expect(file.ok && takeJournalOut(file.value).said).toMatch(/journal .* left out|without it/)
      expect(file.ok && takeJournalOut(file.value).plan.unknown?.file).toBeUndefined()
    }
  })
})
