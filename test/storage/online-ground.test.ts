import { afterEach, expect, test, vi } from 'vitest'
import { TILE_CELLS } from '../../src/files/elevation-tiles'
import { EMPTY_PLAN } from '../../src/plan/plan'
import { type FetchTile, onlineGround } from '../../src/storage/online-ground'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { planOf } from '../terrain/made-plan'

const server = { url: 'https://example.org/{z}/{x}/{y}.png', credit: 'Example' }
const extent = { westDeg: 14, eastDeg: 14.2, southDeg: 46.5, northDeg: 46.6 }
const { plan } = planOf(
  [
    [0, 0],
    [500, 0],
  ],
  ['surface'],
)

/** A tile that is 412 m high all over. */
const level: FetchTile = async () => {
  const rgba = new Uint8ClampedArray(TILE_CELLS ** 2 * 4)
  for (let i = 0; i < rgba.length; i += 4) rgba.set([128 + 1, 412 - 256, 0, 255], i)
  return { rgba, sizeBytes: 1000 }
}

const sourceOf = async (fetchTile: FetchTile) => (await onlineGround(server, fetchTile)(plan))[0]!

test('heights from a server are a grid, told tile by tile', async () => {
  const asked: string[] = []
  const told: number[] = []
  const source = await sourceOf((url, signal) => {
    asked.push(url)
    return level(url, signal)
  })
  const result = await source.read(extent, { onProgress: (done) => told.push(done) })
  const grid = result?.ok ? result.value : null
  expect(groundFromGrids([grid!]).heightM(14.1, 46.55)).toBe(412)
  expect(asked[0]).toMatch(/^https:\/\/example\.org\/13\/\d+\/\d+\.png$/)
  expect(told.at(-1)).toBe(1)
  expect(source.sizeBytes()).toBe(asked.length * 1000)
})

test('nothing is asked for a plan that lies nowhere', async () => {
  const never: FetchTile = () => Promise.reject(new Error('asked'))
  expect(await onlineGround(server, never)(EMPTY_PLAN)).toEqual([])
  expect(await (await sourceOf(never)).read(undefined, {})).toEqual({ ok: true, value: null })
})

test('a server without tiles there gives no grid; one that does not answer is told in a sentence', async () => {
  expect(await (await sourceOf(async () => undefined)).read(extent, {})).toEqual({ ok: true, value: null })
  const silent = await (await sourceOf(() => Promise.reject(new TypeError('offline')))).read(extent, {})
  expect(silent?.ok === false && silent.problems[0]!.message).toMatch(/does not answer/)
})

test('a reading that is stopped rejects', async () => {
  const source = await sourceOf(level)
  await expect(source.read(extent, { signal: AbortSignal.abort() })).rejects.toThrow()
})

/** What a server answers, as `fetch` hands it over. */
function serves(body: BodyInit, headers: Record<string, string> = {}) {
  vi.stubGlobal('fetch', async () => new Response(body, { headers }))
  const unpacked = vi.fn()
  vi.stubGlobal('createImageBitmap', unpacked)
  return unpacked
}
const readOnline = async () => {
  const [source] = await onlineGround(server)(plan)
  const result = await source!.read(extent, {})
  return result?.ok === false ? result.problems[0]!.message : 'no problem'
}
afterEach(() => void vi.unstubAllGlobals())

test('a picture of 16 000 × 16 000 is refused by its header, before it is unpacked', async () => {
  const png = new DataView(new ArrayBuffer(64))
  const head = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]
  for (const [i, byte] of head.entries()) png.setUint8(i, byte)
  png.setUint32(16, 16_000)
  png.setUint32(20, 16_000)
  const unpacked = serves(png.buffer as ArrayBuffer)
  expect(await readOnline()).toBe(
    'The server of elevations sends pictures of 16000 × 16000, where tiles of 256 × 256 cells are wanted. Heights from it are left out; look at its address.',
  )
  expect(unpacked).not.toHaveBeenCalled()
})

test('what is no picture, or far too long, is refused as well', async () => {
  const unpacked = serves('<!doctype html>')
  expect(await readOnline()).toContain('sends something that is no picture')
  serves('x', { 'content-length': '90000000' })
  expect(await readOnline()).toContain('sends files that are too large')
  expect(unpacked).not.toHaveBeenCalled()
})
