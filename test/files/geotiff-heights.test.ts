import { readFileSync } from 'node:fs'
import { fromArrayBuffer } from 'geotiff'
import { expect, test } from 'vitest'
import { readMeans } from '../../src/files/geotiff-heights'

async function fixture(name: string) {
  const bytes = readFileSync(`test/terrain/fixtures/${name}`)
  const tiff = await fromArrayBuffer(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length))
  return tiff.getImage()
}
const SCALE = { factor: 1, offsetM: 0, noData: -9999 }

/** make.sh beside the fixtures: 300 + 2·column + 3·row, so the mean of a block is the height at its middle. */
const planeM = (column: number, row: number) => 300 + 2 * column + 3 * row

test('the mean of a block of cells on a plane is the height at its middle; what is over is left out', async () => {
  const image = await fixture('float32-tiles-deflate.tif')
  const window = { left: 3, top: 5, right: 60, bottom: 40 }
  const { columns, rows, heights } = await readMeans(image, window, SCALE, 4, {})
  expect([columns, rows]).toEqual([14, 8])
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const middleM = planeM(3 + column * 4 + 1.5, 5 + row * 4 + 1.5)
      expect(heights[row * columns + column]).toBeCloseTo(middleM, 3)
    }
  }
})

test('of a block with voids the known cells count; of one that is all void nothing is known', async () => {
  const image = await fixture('float32-void.tif')
  // Void: columns 20 to 23, rows 10 to 13.
  const window = { left: 20, top: 8, right: 28, bottom: 16 }
  const all = await readMeans(image, { ...window, top: 10, bottom: 14 }, SCALE, 4, {})
  expect([...all.heights].map(Number.isNaN)).toEqual([true, false])
  const half = await readMeans(image, window, SCALE, 4, {})
  expect(half.heights[0]).toBeCloseTo(planeM(21.5, 8.5), 3)
})
