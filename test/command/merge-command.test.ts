import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { runMerge } from '../../src/command/merge-command'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'

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
