import 'fake-indexeddb/auto'
import { zipSync } from 'fflate'
import { expect, test } from 'vitest'
import { type Everything, formatEverything, parseEverything } from '../../src/files/everything-file'
import { formatPlan } from '../../src/files/format-plan'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { allKept, takeIn } from '../../src/storage/all-kept'
import { openDrafts } from '../../src/storage/drafts'
import { newKey } from '../../src/storage/new-key'

const titled = (title: string): Plan => ({ ...EMPTY_PLAN, title })
async function browserWith(...plans: readonly Plan[]) {
  const drafts = await openDrafts(newKey())
  for (const plan of plans)
    await drafts.save({ plan, state: { key: newKey(), revision: 1 }, doc: `doc of ${plan.title}` })
  return drafts
}
const titles = async (drafts: Awaited<ReturnType<typeof browserWith>>) =>
  (await drafts.list()).filter(({ isRemoved }) => !isRemoved).map(({ title }) => title)
const nothing: Everything = { plans: [], versions: [], entries: '', shelf: '', settings: {}, maps: [] }

test('all that one browser keeps comes into another, in its order, through a file', async () => {
  const from = await browserWith(titled('Moor'), titled('Ridge'))
  await from.db.add('versions', {
    ...{ id: 'v', doc: 'doc of Moor', name: 'As laid', keptAt: new Date(0), order: 1 },
    text: formatPlan(titled('Moor before')),
  })
  const all = {
    ...nothing,
    ...(await allKept(from)),
    settings: { units: 'us' },
    maps: [{ name: 'a.pmtiles', sizeBytes: 5 }],
  }
  const read = await parseEverything(await formatEverything(all))
  if (!read.ok) throw new Error(read.problems[0]!.message)
  expect(read.value).toEqual(all)
  const into = await browserWith()
  expect(await takeIn(into, read.value)).toEqual({ plans: 2, versions: 1, known: 0, unreadable: 0 })
  expect(await titles(into)).toEqual(await titles(from))
  const [version] = await into.db.getAllFromIndex('versions', 'doc', 'doc of Moor')
  expect(version).toMatchObject({ name: 'As laid', keptAt: new Date(0) })
  // Twice the same file brings nothing more.
  expect(await takeIn(into, read.value)).toEqual({ plans: 0, versions: 0, known: 3, unreadable: 0 })
})

test('another state of a plan comes beside the one that is here, which stays', async () => {
  const here = await browserWith(titled('Moor'))
  const [before] = await here.db.getAll('drafts')
  const text = formatPlan({ ...titled('Moor'), note: 'from the other machine' })
  await takeIn(here, { plans: [{ doc: before!.doc, name: 'Moor', savedAt: '', text }], versions: [] })
  expect(await titles(here)).toEqual(['Moor', 'Moor'])
  expect(await here.db.get('drafts', before!.key)).toEqual(before)
})

test('what cannot be read is counted, and left out; what was removed does not go along', async () => {
  const here = await browserWith(titled('Moor'))
  await here.remove((await here.list())[0]!.key)
  expect((await allKept(here)).plans).toEqual([])
  const broken = { doc: 'x', name: 'x', savedAt: '', text: '{"no": "plan"}' }
  expect(await takeIn(here, { plans: [broken], versions: [broken] })).toMatchObject({
    plans: 0,
    versions: 0,
    unreadable: 2,
  })
  expect(await titles(here)).toEqual([])
})

test('an archive of another kind, or a bomb, ends in a sentence', async () => {
  const messageOf = async (bytes: Uint8Array) => {
    const read = await parseEverything(bytes)
    return read.ok ? 'none' : read.problems[0]!.message
  }
  expect(await messageOf(new TextEncoder().encode('no archive'))).toMatch(/holds no list|cannot be unpacked/)
  expect(
    await messageOf(zipSync({ 'everything.json': new TextEncoder().encode('{"format": "else"}') })),
  ).toMatch(/not made by/)
  expect(await messageOf(zipSync({ 'everything.json': new Uint8Array(210e6) }, { level: 1 }))).toMatch(
    /unpacks to more/,
  )
})
