// @vitest-environment page
import { afterEach, describe, expect, test, vi } from 'vitest'
import { bytesFromBlob } from '../../src/files/byte-source'
import { readElevationGrid } from '../../src/files/elevation-files'
import { parsePlan } from '../../src/files/parse-plan'
import { EMPTY_PLAN } from '../../src/plan/plan'
import { createStore } from '../../src/state/store'
import { takeDroppedFiles } from '../../src/storage/choose-files'
import { openPlanFile } from '../../src/storage/open-plan-file'
import { planFileName, savePlanFile } from '../../src/storage/save-plan-file'
import type { ElevationGrid } from '../../src/terrain/elevation-grid'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'

const PLAN_TEXT = JSON.stringify({
  type: 'FeatureCollection',
  plan: { format: 'fieldpair-plan', version: 1, title: 'From a file' },
  features: [
    {
      type: 'Feature',
      id: 's1',
      geometry: { type: 'Point', coordinates: [11, 47] },
      properties: { kind: 'station', name: 'Hut' },
    },
  ],
})

afterEach(() => {
  vi.unstubAllGlobals()
})

describe('opening a file', () => {
  test('puts its plan on the table', async () => {
    const store = createStore()
    await openPlanFile(store, new File([PLAN_TEXT], 'camp.plan.geojson'))
    expect(store.plan.value.title).toBe('From a file')
    expect(store.refusedFile.value).toBeNull()
  })

  test('refuses a bad one whole: every fault is listed and the plan on screen stays', async () => {
    const store = createStore({ ...EMPTY_PLAN, title: 'On screen' })
    const bad = PLAN_TEXT.replace('[11,47]', '[11,95]').replace('"version":1', '"version":9')
    await openPlanFile(store, new File([bad], 'bad.plan.geojson'))
    expect(store.plan.value.title).toBe('On screen')
    expect(store.refusedFile.value?.name).toBe('bad.plan.geojson')
    expect(store.refusedFile.value?.problems.length).toBeGreaterThan(0)
  })

  test('says in a sentence that it cannot be read', async () => {
    const store = createStore()
    const file = new File([''], 'gone.plan.geojson')
    file.arrayBuffer = () => Promise.reject(new DOMException('gone', 'NotFoundError'))
    await openPlanFile(store, file)
    expect(store.notice.value).toMatch(/^gone\.plan\.geojson cannot be read/)
  })

  test('takes a file that is dropped anywhere, and never lets the browser leave the page for it', () => {
    const taken: File[] = []
    const held: boolean[] = []
    const stop = takeDroppedFiles(
      (files) => taken.push(...files),
      (areHeld) => held.push(areHeld),
    )
    const file = new File([PLAN_TEXT], 'camp.plan.geojson')
    const drop = Object.assign(new Event('drop', { cancelable: true }), {
      dataTransfer: { types: ['Files'], files: [file] },
    })
    dispatchEvent(
      Object.assign(new Event('dragover', { cancelable: true }), { dataTransfer: drop.dataTransfer }),
    )
    expect(held).toEqual([true])
    dispatchEvent(drop)
    expect(held).toEqual([true, false])
    expect(taken).toEqual([file])
    expect(drop.defaultPrevented).toBe(true)
    stop()
  })
})

describe('saving a file', () => {
  test('writes what opens again as the same plan', async () => {
    const store = createStore()
    await openPlanFile(store, new File([PLAN_TEXT], 'camp.plan.geojson'))
    const written: string[] = []
    const file = { write: async (text: string) => void written.push(text), close: async () => {} }
    const showSaveFilePicker = vi.fn(async () => ({ createWritable: async () => file }))
    Object.assign(window, { showSaveFilePicker })
    await savePlanFile(store)
    expect(showSaveFilePicker).toHaveBeenCalledWith({ suggestedName: 'From a file.plan.geojson' })
    expect(parsePlan(written.join(''))).toEqual({ ok: true, value: store.plan.value })
    expect([store.inFile.value, store.notice.value]).toEqual([store.plan.value, ''])
    const grid = { key: 'g', name: 'hills.tif', sizeBytes: 1, cellM: 30, middle: undefined, isKept: true }
    store.grids.value = [{ ...grid, state: 'read' }]
    await savePlanFile(store)
    expect(store.notice.value).toContain(
      'its elevations stay behind. Whoever opens it elsewhere also needs hills.tif',
    )
    Reflect.deleteProperty(window, 'showSaveFilePicker')
  })

  test('takes elevations along that somebody brought, and gives them back where it is opened', async () => {
    const store = createStore({ ...EMPTY_PLAN, title: 'Camp' })
    const hills: ElevationGrid = {
      name: 'hills.tif',
      crs: { kind: 'geographic' },
      columns: 2,
      rows: 1,
      transform: { x0: 11, xPerColumn: 1, xPerRow: 0, y0: 47, yPerColumn: 0, yPerRow: -1 },
      heights: Int16Array.of(800, 900),
    }
    store.ground.value = groundFromGrids([hills, { ...hills, name: 'demo.terrain.tif' }])
    const entry = { sizeBytes: 1, cellM: 30, middle: undefined, isKept: true, state: 'read' } as const
    store.grids.value = [
      { ...entry, key: 'g', name: 'hills.tif' },
      { ...entry, key: 'demo', name: 'The demo’s ground, invented' },
    ]
    const written: string[] = []
    const file = { write: async (text: string) => void written.push(text), close: async () => {} }
    Object.assign(window, { showSaveFilePicker: async () => ({ createWritable: async () => file }) })
    await savePlanFile(store, true)
    Reflect.deleteProperty(window, 'showSaveFilePicker')
    expect(store.notice.value).toContain('saved with the elevations around it, from hills.tif')

    const later = createStore()
    const added: File[] = []
    later.groundWorker.value = {
      add: async (files: readonly File[]) => void added.push(...files),
    } as unknown as NonNullable<typeof later.groundWorker.value>
    await openPlanFile(later, new File(written, 'camp.plan.geojson'))
    expect(later.plan.value.title).toBe('Camp')
    await expect.poll(() => added.map(({ name }) => name)).toEqual(['hills.tif.heights.json'])
    const read = await readElevationGrid(bytesFromBlob(added[0]!.name, added[0]!))
    expect(read.ok && [...read.value!.heights]).toEqual([800, 900])
  })

  test('says so where the place cannot be written, and nothing where the person thinks better of it', async () => {
    const store = createStore({ ...EMPTY_PLAN, title: 'Camp' })
    const refuse = (name: string) =>
      Object.assign(window, { showSaveFilePicker: () => Promise.reject(new DOMException('no', name)) })
    refuse('AbortError')
    await savePlanFile(store)
    expect(store.notice.value).toBe('')
    refuse('NoModificationAllowedError')
    await savePlanFile(store)
    expect(store.notice.value).toMatch(/could not be written/)
    Reflect.deleteProperty(window, 'showSaveFilePicker')
  })

  test.each([
    ['Larch Fork', 'Larch Fork.plan.geojson'],
    ['a/b\\c:d*e?', 'a-b-c-d-e.plan.geojson'],
    ['..', 'plan.plan.geojson'],
    ['', 'plan.plan.geojson'],
  ])('names the file of a plan called "%s" so that every system takes it', (title, name) => {
    expect(planFileName(title)).toBe(name)
  })
})
