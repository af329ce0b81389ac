import { afterEach, expect, test, vi } from 'vitest'
import { countOfTiles } from '../../src/files/maps/map-archive'
import { KEEPING } from '../../src/storage/keeping-bounds'
import { type FetchPicture, onlineTiles, weighOnline } from '../../src/storage/online-part'

const URL = 'https://tiles.example/{z}/{x}/{y}.png'
const extent = { westDeg: 14, eastDeg: 14.1, southDeg: 46.5, northDeg: 46.55 }
const now = { pause: async () => undefined }
const said = (result: Awaited<ReturnType<typeof onlineTiles>> | Awaited<ReturnType<typeof weighOnline>>) =>
  result.ok ? 'all is well' : result.problems[0]!.message
const of =
  (bytes: number): FetchPicture =>
  async () =>
    new Uint8Array(bytes)
afterEach(() => void vi.unstubAllGlobals())

test('a part is weighed by one tile of each level, and no more levels than may be kept', async () => {
  const asked: string[] = []
  const weights = await weighOnline(URL, extent, {
    ...now,
    fetchPicture: (url, signal) => {
      asked.push(url)
      return of(10_000)(url, signal)
    },
  })
  if (!weights.ok) throw new Error(said(weights))
  expect(asked).toHaveLength(weights.value.length)
  for (const { zoom, tiles, bytes } of weights.value) {
    expect(tiles).toBe(countOfTiles(extent, zoom))
    expect(bytes).toBe(tiles * 10_000)
  }
  const total = weights.value.reduce((sum, { tiles }) => sum + tiles, 0)
  expect(total).toBeLessThanOrEqual(KEEPING.mostTiles)
  const next = weights.value.at(-1)!.zoom + 1
  expect(total + countOfTiles(extent, next)).toBeGreaterThan(KEEPING.mostTiles)
})

test('levels that would weigh too much are left out, and a server with nothing there is told', async () => {
  const heavy = await weighOnline(URL, extent, { ...now, fetchPicture: of(1_000_000) })
  expect(heavy.ok && heavy.value.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThanOrEqual(
    KEEPING.mostBytes,
  )
  expect(said(await weighOnline(URL, extent, { ...now, fetchPicture: async () => undefined }))).toContain(
    'no tiles around the plan',
  )
})

test('tiles are asked for one after the other, no faster than is kind', async () => {
  const pauses: number[] = []
  let underWay = 0
  const result = await onlineTiles(
    URL,
    extent,
    [12, 13],
    {
      fetchPicture: async () => {
        expect(++underWay).toBe(1)
        await Promise.resolve()
        underWay--
        return new Uint8Array(10)
      },
      pause: async (ms) => void pauses.push(ms),
    },
    {},
  )
  const count = countOfTiles(extent, 12) + countOfTiles(extent, 13)
  expect(result.ok && result.value.length).toBe(count)
  expect(pauses).toEqual(Array(count).fill(1000 / KEEPING.tilesPerS))
})

test('more bytes than may be kept, a server that is silent, and a person who stops it', async () => {
  expect(said(await onlineTiles(URL, extent, [14], { ...now, fetchPicture: of(20e6) }, {}))).toContain(
    'more than 60 MB',
  )
  const silent: FetchPicture = () => Promise.reject(new TypeError('offline'))
  expect(said(await onlineTiles(URL, extent, [12], { ...now, fetchPicture: silent }, {}))).toContain(
    'does not answer',
  )
  await expect(onlineTiles(URL, extent, [12], now, { signal: AbortSignal.abort() })).rejects.toThrow()
})

test.each([
  [() => new Response('no', { status: 429 }), 'asks to be left alone (429)'],
  [() => new Response('no', { status: 403 }), 'refuses (403)'],
  [() => new Response('<!doctype html>'), 'sends something that is no picture'],
  [() => new Response('x', { headers: { 'content-length': '90000000' } }), 'too large for tiles'],
])('a server that sends no tile ends it at once', async (response, words) => {
  const asked = vi.fn(async (_url: string, _options: RequestInit) => response())
  vi.stubGlobal('fetch', asked)
  expect(said(await onlineTiles(URL, extent, [13], now, {}))).toContain(words)
  expect(asked).toHaveBeenCalledTimes(1)
  expect(asked.mock.calls[0]![1]).toMatchObject({ credentials: 'omit' })
})
