import { expect, test } from 'vitest'
import type { Plan } from '../../src/plan/plan'
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

test('the second of two files waits until the first is answered, and neither is lost', async () => {
  const { store, drop } = dropped()
  const done = drop(
    new File([ROADS], 'roads.geojson'),
    new File(['{ "features": [] '], 'torn.geojson'),
    new File([ROADS], 'more.geojson'),
  )
  const waits = (name: string) => expect.poll(() => store.imported.value?.name).toBe(name)
  await expect.poll(() => store.refusedFile.value?.name).toBe('torn.geojson')
  store.refusedFile.value = null
  await waits('roads.geojson')
  store.imported.value = null
  await waits('more.geojson')
  await done
})

test('of two plans the first lies on the table, and the other is named', async () => {
  const { store, drop } = dropped()
  await drop(new File([PLAN], 'camp.plan.geojson'), new File([PLAN], 'ridge.plan.geojson'))
  expect(store.plan.value.title).toBe('From a file')
  expect(store.notice.value).toContain('ridge.plan.geojson: open separately')
})

test('of three plans the first lies on the table, and the others are kept aside, but for what is no plan', async () => {
  const { store } = dropped()
  const kept: string[] = []
  const keepAside = async ({ title }: Plan) => kept.push(title) > 0
  const named = (title: string) => PLAN.replace('From a file', title)
  const files = [
    new File([named('Camp')], 'camp.plan.geojson'),
    new File([named('Torn').replace('"version":1', '"version":9')], 'torn.plan.geojson'),
    new File([named('Ridge')], 'ridge.plan.geojson'),
  ]
  const done = openDroppedFiles(store, files, keepAside)
  await expect.poll(() => store.refusedFile.value?.name).toBe('torn.plan.geojson')
  store.refusedFile.value = null
  await done
  expect([store.plan.value.title, kept]).toEqual(['Camp', ['Ridge']])
  expect(store.notice.value).toContain('ridge.plan.geojson: kept in this browser')
})

test('elevations that are dropped before anybody can read them are read then', async () => {
  const { store, added, drop } = dropped()
  const worker = store.groundWorker.value
  store.groundWorker.value = null
  await drop(new File(['…'], 'a.tiff'))
  expect(added).toEqual([])
  store.groundWorker.value = worker
  await expect.poll(() => added).toEqual(['a.tiff'])
})

test('what is neither is refused as a plan, with its faults', async () => {
  const { store, drop } = dropped()
  const code = () => store.refusedFile.value?.problems[0]?.code
  await drop(new File(['{'], 'torn.geojson'))
  expect(code()).toBe('not-json')
  store.refusedFile.value = null
  await drop(new File([ROADS.replace('11.1', '500')], 'roads.geojson'))
  expect(code()).toBe('off-globe')
  expect(store.imported.value).toBeNull()
})
