import { expect, test } from 'vitest'
import { bytesFrom } from '../../src/files/byte-source'
import { readElevationGrid } from '../../src/files/elevation-files'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'

/** A tile that climbs 1 m a row southwards and has one void, as the SRTM quick start lays it out. */
function tile(side: number): Uint8Array<ArrayBuffer> {
  const view = new DataView(new ArrayBuffer(side * side * 2))
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) {
      view.setInt16((row * side + column) * 2, row === 600 && column === 600 ? -32768 : row)
    }
  }
  return new Uint8Array(view.buffer)
}

const near = (lonDeg: number, latDeg: number) => ({
  westDeg: lonDeg - 0.01,
  eastDeg: lonDeg + 0.01,
  southDeg: latDeg - 0.01,
  northDeg: latDeg + 0.01,
})

test.each([
  [1201, 'N46E007.hgt', 7, 46],
  [3601, 'S34W059.SRTMGL1.hgt', -59, -34],
])('a tile of %i samples a side lies where its name %s says', async (side, name, lonDeg, latDeg) => {
  const source = bytesFrom(name, tile(side))
  const at = async (lon: number, lat: number) => {
    const result = await readElevationGrid(source, near(lon, lat))
    return result.ok && result.value ? groundFromGrids([result.value]).heightM(lon, lat) : 'elsewhere'
  }
  expect(await at(lonDeg + 0.25, latDeg + 1)).toBe(0)
  expect(await at(lonDeg + 0.25, latDeg)).toBeCloseTo(side - 1, 6)
  expect(await at(lonDeg + 0.25, latDeg + 1 - 100.5 / (side - 1))).toBeCloseTo(100.5, 6)
  expect(await at(lonDeg + 600.3 / (side - 1), latDeg + 1 - 600.3 / (side - 1))).toBeUndefined()
  expect(await at(lonDeg + 3, latDeg + 0.5)).toBe('elsewhere')
})

test.each([
  ['Hills.hgt', 1201, /must say its south-west corner/],
  ['N46E007.hgt', 1000, /25,934,402 bytes \(1″\) or 2,884,802 bytes \(3″\); this one has 2,000,000/],
  ['N95E007.hgt', 1201, /off the globe/],
])('%s of %i samples a side is refused in a sentence', async (name, side, sentence) => {
  const result = await readElevationGrid(bytesFrom(name, tile(side)))
  expect(result.ok ? '' : result.problems[0]!.message).toMatch(sentence)
})
