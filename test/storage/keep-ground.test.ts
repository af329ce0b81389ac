// @vitest-environment page
import 'fake-indexeddb/auto'
import { afterEach, expect, test } from 'vitest'
import type { Position } from '../../src/geo/position'
import type { TerrainJobs } from '../../src/jobs/terrain-jobs'
import type { StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { bad, ok } from '../../src/problem'
import { createStore } from '../../src/state/store'
import type { GridSource } from '../../src/storage/grid-source'
import { type GroundKeeper, keepGround } from '../../src/storage/keep-ground'
import type { ElevationGrid, Extent } from '../../src/terrain/elevation-grid'

/** A degree of level ground at 300 m, its south-west corner at 11° E 47° N, in cells of 1/100°. */
const GRID: ElevationGrid = {
  name: 'level',
  crs: { kind: 'geographic' },
  columns: 100,
  rows: 100,
  transform: { x0: 11.005, xPerColumn: 0.01, xPerRow: 0, y0: 47.995, yPerColumn: 0, yPerRow: -0.01 },
  heights: new Float32Array(10_000).fill(300),
}
const planAt = (...positions: Position[]): Plan => ({
  ...EMPTY_PLAN,
  stations: new Map(
    positions.map((position, i) => [
      `s${i}` as StationId,
      { id: `s${i}` as StationId, name: '', note: '', position },
    ]),
  ),
})
const FILE = new File(['heights'], 'level.tif')

/** Jobs that read a file as told, and note what was asked for. */
function scriptedJobs(answer: (extent: Extent | undefined) => ReturnType<TerrainJobs['readGrid']>) {
  const asked: (Extent | undefined)[] = []
  const jobs = {
    readGrid: (_file: File, extent: Extent | undefined) => {
      asked.push(extent)
      return answer(extent)
    },
  } as unknown as TerrainJobs
  return { jobs, asked }
}

let keepers: GroundKeeper[] = []
async function keep(
  plan: Plan,
  answer: Parameters<typeof scriptedJobs>[0],
  name: string,
  others: Parameters<typeof keepGround>[2] = [],
) {
  const store = createStore(plan)
  const { jobs, asked } = scriptedJobs(answer)
  const keeper = await keepGround(store, jobs, others, name)
  keepers.push(keeper)
  return { store, keeper, asked }
}
afterEach(() => {
  for (const keeper of keepers) keeper.stop()
  keepers = []
})

const inside = async () => ok(GRID)

test('a file that is opened gives its ground, and is there in the next window', async () => {
  const first = await keep(planAt([11.5, 47.5]), inside, 'kept')
  await first.keeper.add([FILE])
  expect(first.store.ground.value?.heightM(11.5, 47.5)).toBe(300)
  expect(first.store.grids.value).toMatchObject([
    { name: 'level.tif', sizeBytes: 7, isKept: true, state: 'read' },
  ])
  const second = await keep(planAt([11.5, 47.5]), inside, 'kept')
  await expect.poll(() => second.store.ground.value?.heightM(11.5, 47.5)).toBe(300)
  await second.keeper.remove(second.store.grids.value[0]!.key)
  expect(second.store.ground.value).toBeUndefined()
  const third = await keep(planAt([11.5, 47.5]), inside, 'kept')
  await expect.poll(() => third.store.grids.value).toEqual([])
})

test('a file that lies elsewhere says so, and where', async () => {
  const answer = async (extent?: Extent) => ok(extent && extent.westDeg < 10 ? null : GRID)
  const { store, keeper } = await keep(planAt([9.5, 47.5]), answer, 'elsewhere')
  await keeper.add([FILE])
  expect(store.grids.value).toMatchObject([{ name: 'level.tif', state: 'elsewhere', middle: undefined }])
  expect(store.notice.value).toMatch(/^level\.tif lies elsewhere/)
  const place = await keeper.find(store.grids.value[0]!.key)
  // The middle of a degree whose south-west corner lies at 11° E 47° N.
  expect(place?.[0]).toBeCloseTo(11.5, 2)
  expect(place?.[1]).toBeCloseTo(47.5, 2)
})

test('a record that is no file any more takes no other with it', async () => {
  const first = await keep(planAt([11.5, 47.5]), inside, 'torn')
  await first.keeper.add([FILE])
  const { openDB } = await import('idb')
  const db = await openDB('torn')
  await db.put('files', { key: 'a', name: 'torn.tif', bytes: 'not bytes' })
  await db.put('files', { key: 'b' })
  db.close()
  const second = await keep(planAt([11.5, 47.5]), inside, 'torn')
  await expect.poll(() => second.store.ground.value?.heightM(11.5, 47.5)).toBe(300)
  expect(second.store.grids.value).toHaveLength(1)
})

test('opened a second time, it is not there twice', async () => {
  const { store, keeper } = await keep(planAt([11.5, 47.5]), inside, 'twice')
  await keeper.add([FILE])
  await keeper.add([FILE])
  expect(store.grids.value).toHaveLength(1)
})

test('a plan that outgrows what was read has it read anew, with room to grow in', async () => {
  const { store, keeper, asked } = await keep(planAt([11.5, 47.5]), inside, 'grows')
  await keeper.add([FILE])
  expect(asked).toHaveLength(1)
  store.edit(() => planAt([11.5, 47.5], [11.501, 47.5]))
  await keeper.add([])
  await new Promise((resolve) => setTimeout(resolve, 20))
  expect(asked).toHaveLength(1)
  store.edit(() => planAt([11.5, 47.5], [11.9, 47.5]))
  await expect.poll(() => asked.length).toBe(2)
  expect(asked[1]!.eastDeg).toBeGreaterThan(11.92)
  expect(asked[1]!.westDeg).toBeLessThan(11.48)
})

test('a file of another country is kept and says so', async () => {
  const { store, keeper } = await keep(planAt([30, 10]), async () => ok(null), 'elsewhere')
  await keeper.add([FILE])
  expect(store.grids.value[0]?.state).toBe('elsewhere')
  expect(store.ground.value).toBeUndefined()
})

test('a file too large to be read whole waits for a plan', async () => {
  const tooLarge = bad({ code: 'too-many-cells', at: 'level.tif', message: 'It has too many cells.' })
  const { store, keeper } = await keep(EMPTY_PLAN, async (extent) => (extent ? ok(GRID) : tooLarge), 'waits')
  await keeper.add([FILE])
  expect(store.grids.value[0]?.state).toBe('waiting')
  store.edit(() => planAt([11.5, 47.5]))
  await expect.poll(() => store.ground.value?.heightM(11.5, 47.5)).toBe(300)
})

test('a broken file is refused with its faults and is not kept', async () => {
  const fault = { code: 'broken', at: 'level.tif', message: 'It is broken.' }
  const { store, keeper } = await keep(planAt([11.5, 47.5]), async () => bad(fault), 'broken')
  await keeper.add([FILE])
  expect(store.refusedFile.value).toEqual({ name: 'level.tif', problems: [fault] })
  expect(store.grids.value).toEqual([])
})

test('a reading that the person stops keeps nothing', async () => {
  const store = createStore(planAt([11.5, 47.5]))
  const jobs = {
    readGrid: (_file: File, _extent: unknown, { signal }: { signal: AbortSignal }) =>
      new Promise((_resolve, reject) => signal.addEventListener('abort', () => reject(signal.reason))),
  } as unknown as TerrainJobs
  const keeper = await keepGround(store, jobs, [], 'stopped')
  keepers.push(keeper)
  const adding = keeper.add([FILE])
  await expect.poll(() => store.work.value?.words).toBe('Reading heights from level.tif')
  store.work.value?.stop()
  await adding
  expect([store.work.value, store.grids.value, store.notice.value]).toEqual([null, [], ''])
})

test('what others know of the country serves beside the files, and only where they know it', async () => {
  const source: GridSource = {
    ...{ key: 'demo', name: 'Demo', isKept: false, sizeBytes: () => 1 },
    read: async () => ok(GRID),
  }
  const here = async (plan: Plan) => (plan.title === 'here' ? [source] : [])
  const { store } = await keep({ ...planAt([11.5, 47.5]), title: 'here' }, inside, 'others', [here])
  await expect.poll(() => store.ground.value?.heightM(11.5, 47.5)).toBe(300)
  store.open(planAt([30, 10]))
  await expect.poll(() => store.ground.value).toBeUndefined()
})

test('a plan that comes while its own country is being read for another has its ground too', async () => {
  let readings = 0
  const source: GridSource = {
    ...{ key: 'slow', name: 'Slow', isKept: false, sizeBytes: () => 1 },
    read: async (_extent, { signal }) => {
      readings += 1
      if (readings > 1) return ok(GRID)
      return new Promise((_resolve, reject) =>
        signal!.addEventListener('abort', () => reject(signal!.reason)),
      )
    },
  }
  const { store } = await keep(planAt([11.5, 47.5]), inside, 'come', [async () => [source]])
  await expect.poll(() => readings).toBe(1)
  store.open(planAt([11.5, 47.5]))
  await expect.poll(() => store.ground.value?.heightM(11.5, 47.5)).toBe(300)
})
