import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { bytesFrom } from '../../src/files/byte-source'
import { readGeotiffGrid } from '../../src/files/geotiff-grid'
import { contourIntervalM, contourLines } from '../../src/terrain/contours'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { hillShade } from '../../src/terrain/hill-shade'
import { mapPatch, patchStepM } from '../../src/terrain/map-patch'
import { gridOver, metresOf, place } from './made-ground'

async function fixture(name: string) {
  const bytes = new Uint8Array(readFileSync(`test/terrain/fixtures/${name}`))
  const result = await readGeotiffGrid(bytesFrom(name, bytes))
  if (!result.ok || !result.value) throw new Error(name)
  return result.value
}

describe('hill shading', () => {
  test('is gdaldem’s, point by point', async () => {
    const hills = await fixture('hills.tif')
    const reference = await fixture('hills-shade.tif')
    const shade = hillShade(hills.heights as Float32Array, 48, 36, { acrossM: 25, downM: 25 })
    for (let row = 1; row < 35; row++) {
      for (let column = 1; column < 47; column++) {
        const i = row * 48 + column
        expect(Math.abs(shade[i]! - reference.heights[i]!)).toBeLessThanOrEqual(1)
      }
    }
  })

  test('leaves out what is not known', () => {
    const shade = hillShade(new Float32Array(9).fill(Number.NaN), 3, 3, { acrossM: 1, downM: 1 })
    expect([...shade]).toEqual(new Array(9).fill(0))
  })
})

const [westDeg, southDeg] = place(-2000, -2000)
const [eastDeg, northDeg] = place(2000, 2000)
const patch = mapPatch({ westDeg, southDeg, eastDeg, northDeg }, 201, 201)

test('a patch on the map has the heights of the ground under it', () => {
  const ground = groundFromGrids([gridOver((e, n) => 500 + 0.1 * e - 0.2 * n, 30)])
  const heightsM = ground.heightsOverM(patch)
  const [lonDeg, latDeg] = patch.at(50 / 200, 150 / 200)
  expect(heightsM[150 * 201 + 50]).toBeCloseTo(ground.heightM(lonDeg, latDeg)!, 2)
  expect(patchStepM(patch).acrossM).toBeCloseTo(20, 1)
  expect(patchStepM(patch).downM).toBeCloseTo(20, 1)
})

describe('contours', () => {
  // A cone of slope 0.4 and top 1500 m: the line of height z is the circle of radius (1500 − z) / 0.4.
  const cone = groundFromGrids([gridOver((e, n) => 1500 - 0.4 * Math.hypot(e, n), 10)]).heightsOverM(patch)

  test('of a cone are circles, each where its height says', () => {
    const lines = contourLines(cone, patch, 50)
    expect(lines.length).toBeGreaterThan(15)
    for (const { heightM, positions } of lines) {
      for (const position of positions) {
        const radiusM = Math.hypot(...metresOf(position))
        expect(Math.abs(radiusM - (1500 - heightM) / 0.4)).toBeLessThan(4)
      }
    }
  })

  test('end at the edge of the patch, half way along no frame', () => {
    const open = contourLines(cone, patch, 50).filter((line) => (1500 - line.heightM) / 0.4 > 2050)
    for (const { positions } of open) {
      const atEdge = [positions[0]!, positions.at(-1)!].map((p) => Math.max(...metresOf(p).map(Math.abs)))
      for (const reachM of atEdge) expect(reachM).toBeGreaterThan(1975)
    }
    expect(open.length).toBeGreaterThan(0)
  })

  test('carry a height on every fifth line, and none on the rest', () => {
    const lines = contourLines(cone, patch, 50)
    for (const line of lines) {
      expect(line.isIndex).toBe(line.heightM % 250 === 0)
      if (line.label) expect(line.isIndex).toBe(true)
    }
    expect(lines.some((line) => line.label)).toBe(true)
  })

  test('stop where the ground is not known', () => {
    const holed = cone.map((heightM, i) => (i % 201 > 120 ? Number.NaN : heightM))
    for (const { positions } of contourLines(holed, patch, 50)) {
      for (const position of positions) expect(metresOf(position)[0]).toBeLessThan(405)
    }
  })

  test('run along no edge of the known: on an even slope each is straight', () => {
    const heightsM = new Float32Array(201 * 201).fill(Number.NaN)
    for (let row = 40; row < 160; row++) {
      for (let column = 50; column < 150; column++) heightsM[row * 201 + column] = 500 + 1.5 * column
    }
    const lines = contourLines(heightsM, patch, 10)
    expect(lines.length).toBeGreaterThan(10)
    for (const { positions } of lines) {
      const lons = positions.map(([lonDeg]) => lonDeg)
      expect(Math.max(...lons) - Math.min(...lons)).toBeLessThan(1e-9)
    }
  })

  test('are as many as a map can carry', () => {
    expect(contourIntervalM(cone)).toBe(100)
    expect(contourIntervalM(cone.map((heightM) => 300 + (heightM - 300) / 50))).toBe(2)
  })
})
