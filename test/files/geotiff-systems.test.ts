import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { bytesFrom } from '../../src/files/byte-source'
import { readGeotiffGrid } from '../../src/files/geotiff-grid'
import { systemOfCode } from '../../src/files/systems/epsg-systems'
import { systemOfKeys } from '../../src/files/systems/system-of-keys'
import { degreeM } from '../../src/geo/earth'
import { loadOtherSystems, otherSystem } from '../../src/geo/other-system'
import { cellSizeM } from '../../src/terrain/grid-extent'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'

// A thousand places in twenty national and polar grids, by gdaltransform (test/geo/fixtures/make-places.sh).
const PLACES = readFileSync('test/geo/fixtures/projected-places.txt', 'utf8')
  .trim()
  .split('\n')
  .map((line) => line.split(' ').map(Number))

/**
 * How far, in m, the one shift between datums that the table has for a country may lie from what PROJ takes, which may be a grid of
 * shifts, or one for a part of the country: the accuracy that the EPSG dataset gives for each. 31467: EPSG:1777, 3 m; 27200: EPSG:1564, 4 m;
 * 26717: EPSG:1172, 20 m; 31256: EPSG:1618, 1.5 m; 5514: what two countries share, where each alone has one that is good to 1 m, 15 m; of
 * the others the dataset has no better.
 */
const SHIFT_M: Readonly<Record<number, number>> = { 31467: 3, 27200: 4, 26717: 20, 31256: 1.5, 5514: 15 }
const SAME_M = 0.01

test('a thousand places of national grids lie where gdaltransform has them', async () => {
  expect(PLACES.length).toBe(1000)
  await loadOtherSystems()
  for (const code of new Set(PLACES.map(([each]) => each!))) {
    const system = otherSystem((await systemOfCode(code))!)
    let [worstM, worstOfCodeM] = [0, 0]
    for (const [, x, y, lonDeg, latDeg, ownLonDeg, ownLatDeg] of PLACES.filter(([each]) => each === code)) {
      const [lon, lat] = system.inverse(x!, y!)
      const { lonM, latM } = degreeM(lat)
      const apartM = (otherLon: number, otherLat: number) =>
        Math.hypot((lon - otherLon) * lonM, (lat - otherLat) * latM)
      worstM = Math.max(worstM, apartM(ownLonDeg!, ownLatDeg!))
      worstOfCodeM = Math.max(worstOfCodeM, apartM(lonDeg!, latDeg!))
      const [backX, backY] = system.forward(lon, lat)
      // Rounded to the millimetre; in feet or metres.
      expect(Math.hypot(backX - x!, backY - y!), `EPSG:${code}`).toBeLessThan(0.01)
    }
    // The same definition: only rounding and the order of series differ.
    expect(worstM, `EPSG:${code}`).toBeLessThan(0.002)
    expect(worstOfCodeM, `EPSG:${code}`).toBeLessThan(SHIFT_M[code] ?? SAME_M)
  }
})

async function groundOf(name: string) {
  const bytes = new Uint8Array(readFileSync(`test/terrain/fixtures/${name}.tif`))
  const result = await readGeotiffGrid(bytesFrom(name, bytes))
  if (!result.ok || !result.value) throw new Error(JSON.stringify(result))
  return { grid: result.value, ground: groundFromGrids([result.value]) }
}

// The corner between columns 29 and 30, rows 19 and 20, by gdaltransform of 30, 20 of each file to longitude and latitude of WGS 84.
test.each([
  ['own-tmerc', 15.1750055977003, 47.510240189173],
  ['own-lcc2', 13.2673162590691, 44.4162843117752],
  ['own-lcc1', 13.143787217415, 47.5537725545252],
  ['own-laea', 12.1021970804952, 49.4606746698461],
  ['own-merc', 14.1549948755152, 47.1939232497719],
  ['own-stere', -59.3013960856571, 60.5662535193176],
  ['own-feet', 13.2806810374548, 14.1951178817558],
  ['other-system', 8.10675302741643, 46.9095585810443],
])('%s is a plane, in a system of its own or by its code', async (name, lonDeg, latDeg) => {
  const { ground } = await groundOf(name)
  // Within 0.03 m of place, on a plane that rises 0.12 m a metre.
  expect(ground.heightM(lonDeg, latDeg)).toBeCloseTo(300 + 2 * 29.5 + 3 * 19.5, 2)
})

test('a cell in feet is as long on the ground as feet are', async () => {
  const { grid } = await groundOf('own-feet')
  // 30 US feet, on a meridian whose scale is 1.
  expect(cellSizeM(grid)).toBeCloseTo((30 * 1200) / 3937, 1)
})

test('a packing that loses something still gives heights near those that went in', async () => {
  const { grid } = await groundOf('jpeg')
  // 300…550 m were stretched over 0…250, so that a step of the picture is a metre; at quality 100 it is off by two at most.
  for (let i = 0; i < grid.heights.length; i++)
    expect(Math.abs(grid.heights[i]! - (2 * (i % 60) + 3 * Math.floor(i / 60)))).toBeLessThanOrEqual(2)
})

test('a system that lacks a part, or whose datum lies nobody knows where, is not followed', async () => {
  const bytes = new Uint8Array(readFileSync('test/terrain/fixtures/own-unknown-datum.tif'))
  const result = await readGeotiffGrid(bytesFrom('x.tif', bytes))
  expect(result.ok ? '' : result.problems[0]!.message).toMatch(/of its own making that cannot be followed/)
  expect(await systemOfKeys({ ProjCoordTransGeoKey: 1 })).toBeUndefined()
  expect(await systemOfKeys({ ProjCoordTransGeoKey: 99, GeographicTypeGeoKey: 4326 })).toBeUndefined()
  expect(await systemOfCode(4711_000)).toBeUndefined()
})
