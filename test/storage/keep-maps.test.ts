// @vitest-environment page
import 'fake-indexeddb/auto'
import { expect, test } from 'vitest'
import type { MapsJobs } from '../../src/jobs/maps/maps-jobs'
import { ok } from '../../src/problem'
import { createStore } from '../../src/state/store'
import { keepMaps } from '../../src/storage/keep-maps'
import { openMapFiles } from '../../src/storage/map-files'

const JOBS = { setSpecs: () => undefined, facts: async () => ok({}) } as unknown as MapsJobs
const FILE = new File(['tiles'], 'relief.mbtiles')

async function opened(name: string) {
  const store = createStore()
  const keeper = await keepMaps(store, JOBS, name)
  const onDisk = async () => (await openMapFiles(name)).list()
  return { store, keeper, onDisk }
}

test('what is changed of a map while it is being kept is kept as well', async () => {
  const { store, keeper, onDisk } = await opened('changed')
  await keeper.add([FILE])
  const { key } = store.maps.value[0]!
  const keeping = keeper.keep(key)
  keeper.change(key, { opacity: 0.4 })
  await keeping
  expect(await onDisk()).toMatchObject([{ key, opacity: 0.4 }])
})

test('a map that is removed while it is being kept does not come back', async () => {
  const { store, keeper, onDisk } = await opened('removed')
  await keeper.add([FILE])
  const { key } = store.maps.value[0]!
  const keeping = keeper.keep(key)
  await Promise.all([keeping, keeper.remove(key)])
  expect([store.maps.value, await onDisk()]).toEqual([[], []])
})
