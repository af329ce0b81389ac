import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { bytesFrom } from '../../../src/files/byte-source'
import { geotiffPicture } from '../../../src/files/maps/geotiff-picture'
import { type Picture, tileOfPicture } from '../../../src/files/maps/picture'

const pictureOf = async (path: string) => {
  const result = await geotiffPicture(bytesFrom(path, new Uint8Array(readFileSync(path))))
  if (!result.ok) throw new Error(result.problems[0]!.message)
  return result.value
}

test('a GeoTIFF in a national grid is laid as GDAL’s warper lays it', async () => {
  const picture = await pictureOf('test/files/maps/fixtures/relief.tif')
  const tile = await tileOfPicture(picture, { zoom: 14, column: 11242, row: 5653 }, 64)
  // gdalwarp, bilinear, of the same file (test/files/maps/fixtures/make.sh).
  const theirs = readFileSync('test/files/maps/fixtures/relief-tile.rgba')
  expect(theirs.length).toBe(64 * 64 * 4)
  let [sum, worst] = [0, 0]
  for (const [i, value] of theirs.entries()) {
    const off = Math.abs(value - tile!.data[i]!)
    sum += off
    worst = Math.max(worst, off)
  }
  // Two unpackers of JPEG differ by a step or two, more where colours of half as many dots are spread out.
  expect(sum / theirs.length).toBeLessThan(1)
  expect(worst).toBeLessThan(12)
})

test('from afar its reduced copy serves, and beside it there is nothing', async () => {
  const picture = await pictureOf('test/files/maps/fixtures/relief.tif')
  expect(picture.extent.westDeg).toBeCloseTo(66.959, 2)
  const far = await tileOfPicture(picture, { zoom: 9, column: 351, row: 176 }, 64)
  let covered = 0
  for (let i = 3; i < far!.data.length; i += 4) if (far!.data[i]! > 0) covered++
  // 0.127° of the 0.703° that a tile of zoom 9 is wide, and 0.069° of some 0.465°.
  expect(covered / 64 ** 2).toBeGreaterThan(0.02)
  expect(covered / 64 ** 2).toBeLessThan(0.04)
  expect(await tileOfPicture(picture, { zoom: 14, column: 0, row: 0 }, 64)).toBeUndefined()
})

test('a picture smaller than a dot of the tile is a mean of its cells', async () => {
  // Black and white in turn, one beside the other: from afar grey, wherever the dots of the tile fall.
  const picture: Picture = {
    ...{ columns: 1000, rows: 1000, extent: { westDeg: 0, eastDeg: 1, southDeg: 0, northDeg: 1 } },
    at: (eastM, northM) => [eastM / 100, -northM / 100],
    read: async ({ left, top, right, bottom }, columns, rows) => {
      const data = new Uint8ClampedArray(columns * rows * 4).fill(255)
      for (let i = 0; i < columns * rows; i++) {
        const share = ((right - left) * (bottom - top)) / (columns * rows)
        data.fill(share > 2 ? 128 : 0, i * 4, i * 4 + 3)
      }
      return { data, columns, rows }
    },
  }
  const tile = await tileOfPicture(picture, { zoom: 8, column: 128, row: 128 }, 64)
  expect(tile!.data[(20 * 64 + 20) * 4]).toBe(128)
})

test.each([
  ['hills.tif', /no picture of up to 8 bits/],
  ['no-place.tif', /no picture|does not say/],
])('%s is refused in a sentence', async (name, sentence) => {
  const path = `test/terrain/fixtures/${name}`
  const result = await geotiffPicture(bytesFrom(name, new Uint8Array(readFileSync(path))))
  expect(result.ok ? '' : result.problems[0]!.message).toMatch(sentence)
})

test('cut short anywhere it ends in a sentence, or in a tile', async () => {
  const whole = new Uint8Array(readFileSync('test/files/maps/fixtures/relief.tif'))
  for (let length = 0; length < whole.length; length += 401) {
    const result = await geotiffPicture(bytesFrom('x.tif', whole.slice(0, length)))
    if (!result.ok) expect(result.problems[0]!.message.length).toBeGreaterThan(20)
  }
})
