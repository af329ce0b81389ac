// @vitest-environment page
import { beforeEach, expect, test } from 'vitest'
import { forbidsKeeping, mayKeep } from '../../src/state/keeping-allowed'
import {
  allowKeeping,
  isTileAddress,
  SUGGESTED_SOURCES,
  sourceInUse,
  turnOnTiles,
} from '../../src/state/online-tiles'

test.each([
  ['https://tiles.example/{z}/{x}/{y}.png', true],
  ['http://tiles.example/{z}/{x}/{y}.png', false],
  ['https://tiles.example/map.png', false],
  ['https://{x}/{z}/{y}', false],
  ['javascript:alert(1)//{z}{x}{y}', false],
])('%s is a tile address: %s', (url, expected) => {
  expect(isTileAddress(url)).toBe(expected)
})

const visit = (address: string) =>
  (window as unknown as { happyDOM: { setURL(url: string): void } }).happyDOM.setURL(address)

beforeEach(() => sessionStorage.clear())

test('no tiles are asked for by default, nor by a link that somebody else has made', () => {
  visit('https://plans.example/')
  expect(sourceInUse('map')).toBeNull()
  visit(`https://plans.example/online.html#tiles=${encodeURIComponent(SUGGESTED_SOURCES.map.url)}`)
  expect(sourceInUse('map')).toBeNull()
})

test('what was turned on counts only on the page that may ask for it', () => {
  sessionStorage.setItem('fieldpair-tiles', JSON.stringify(SUGGESTED_SOURCES.map))
  visit('https://plans.example/index.html')
  expect(sourceInUse('map')).toBeNull()
  visit('https://plans.example/online.html')
  expect(sourceInUse('map')).toEqual(SUGGESTED_SOURCES.map)
})

test('what is kept is looked at before it is used', () => {
  visit('https://plans.example/online.html')
  for (const kept of ['{', '7', '{"url":"http://a/{z}{x}{y}","credit":""}', '{"url":1,"credit":2}']) {
    sessionStorage.setItem('fieldpair-tiles', kept)
    expect(sourceInUse('map')).toBeNull()
  }
})

test('heights that were left on do not come on again with the map', () => {
  visit('https://plans.example/online.html')
  turnOnTiles('elevation', SUGGESTED_SOURCES.elevation)
  visit('https://plans.example/')
  turnOnTiles('map', SUGGESTED_SOURCES.map)
  visit('https://plans.example/online.html')
  expect([sourceInUse('map'), sourceInUse('elevation')]).toEqual([SUGGESTED_SOURCES.map, null])
})

test('tiles may be kept only where the person says so, of that address alone, and never of a server that is suggested', () => {
  const own = { url: 'https://tiles.example/{z}/{x}/{y}.png', credit: 'Example' }
  visit('https://plans.example/online.html')
  turnOnTiles('map', own)
  expect(mayKeep(sourceInUse('map')!)).toBe(false)
  allowKeeping(true)
  expect(mayKeep(sourceInUse('map')!)).toBe(true)
  turnOnTiles('map', { ...own, url: 'https://other.example/{z}/{x}/{y}.png' })
  expect(mayKeep(sourceInUse('map')!)).toBe(false)
  turnOnTiles('map', SUGGESTED_SOURCES.map)
  allowKeeping(true)
  expect(mayKeep(sourceInUse('map')!)).toBe(false)
})

test.each([
  [SUGGESTED_SOURCES.map.url, true],
  [SUGGESTED_SOURCES.elevation.url, true],
  ['https://a.tile.openstreetmap.org/{z}/{x}/{y}.png', true],
  ['https://TILE.OSM.ORG/{z}/{x}/{y}.png', true],
  ['https://notopenstreetmap.org/{z}/{x}/{y}.png', false],
  ['https://tiles.example/openstreetmap.org/{z}/{x}/{y}.png', false],
])('%s is known to forbid keeping: %s', (url, expected) => {
  expect(forbidsKeeping(url)).toBe(expected)
})
