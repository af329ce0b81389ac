import { expect, test } from 'vitest'
import { createStore } from '../../src/state/store'
import { openDroppedFiles } from '../../src/storage/open-dropped'

const PLAN = JSON.stringify({
  type: 'FeatureCollection',
  plan: { format: 'fieldpair-plan', version: 1, title: 'From a file' },
  features: [],
})
const ROADS = JSON.stringify({
  type: 'FeatureCollection',
  features: [
    {
      type: 'Feature',
      properties: { highway: 'track' },
      geometry: { type: 'LineString', coordinates: [[11, 47], [11.1, 47]] }, // biome-ignore format: one line
    },
  ],
})

function dropped() {
  const store = createStore()
  const added: string[] = []
  store.groundWorker.value = {
    add: async (files: readonly File[]) => void added.push(...files.map(({ name }) => name)),
  } as unknown as NonNullable<typeof store.groundWorker.value>
  return { store, added, drop: (...files: File[]) => openDroppedFiles(store, files) }
}

test('every dropped file is opened as what it is', async () => {
  const { store, added, drop } = dropped()
  await drop(new File(['…'], 'N46E007.HGT'), new File([PLAN], 'camp.plan.geojson'), new File(['…'], 'a.tiff'))
  expect(added).toEqual(['N46E007.HGT', 'a.tiff'])
  expect(store.plan.value.title).toBe('From a file')
  expect(store.imported.value).toBeNull()
})

test('features without a plan in them wait for the person to say what they are', async () => {
  const { store, drop } = dropped()
  await drop(new File([ROADS], 'roads.geojson'))
  expect(store.imported.value?.name).toBe('roads.geojson')
  expect(store.imported.value?.features.features).toHaveLength(1)
  expect(store.refusedFile.value).toBeNull()
})

test('what is neither is refused as a plan, with its faults', async () => {
  const { store, drop } = dropped()
  await drop(new File(['{'], 'torn.geojson'))
  expect(store.refusedFile.value?.problems[0]?.code).toBe('not-json')
  await drop(new File([ROADS.replace('11.1', '500')], 'roads.geojson'))
  expect(store.refusedFile.value?.problems[0]?.code).toBe('off-globe')
  expect(store.imported.value).toBeNull()
})
