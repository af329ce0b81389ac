import { expect, test } from 'vitest'
import { isTileAddress } from '../../../src/map/paper/tile-address'

test.each([
  ['https://tiles.example/{z}/{x}/{y}.png', true],
  ['http://tiles.example/{z}/{x}/{y}.png', false],
  ['https://tiles.example/map.png', false],
  ['https://{x}/{z}/{y}', false],
  ['javascript:alert(1)//{z}{x}{y}', false],
])('%s is a tile address: %s', (url, expected) => {
  expect(isTileAddress(url)).toBe(expected)
})
