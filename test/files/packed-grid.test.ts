import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bytesFrom } from '../../src/files/byte-source'
import { formatWithElevations, takeElevationsOut } from '../../src/files/carried-elevations'
import { readElevationGrid } from '../../src/files/elevation-files'
import { packGrid } from '../../src/files/packed-grid'
import { parsePlan } from '../../src/files/parse-plan'
import { EMPTY_PLAN } from '../../src/plan/plan'
import type { ElevationGrid, Heights } from '../../src/terrain/elevation-grid'

const TRANSFORM = { x0: 11, xPerColumn: 0.001, xPerRow: 0, y0: 47, yPerColumn: 0, yPerRow: -0.001 }
const grid = (heights: Heights, columns: number, noData?: number): ElevationGrid => ({
  name: 'N46E011.hgt',
  crs: { kind: 'geographic' },
  columns,
  rows: heights.length / columns,
  transform: TRANSFORM,
  heights,
  ...(noData !== undefined && { noData }),
})
const asFile = (text: string) => bytesFrom('N46E011.hgt.heights.json', new TextEncoder().encode(text))
async function roundTrip(from: ElevationGrid) {
  const result = await readElevationGrid(asFile(JSON.stringify(await packGrid(from))))
  if (!result.ok || !result.value) throw new Error('not read')
  return result.value
}

describe('elevations in a plan file', () => {
  test('come back as they were: whole metres exactly, all else to a centimetre, voids as voids', async () => {
    const heightM = fc.oneof(fc.integer({ min: -430, max: 8849 }), fc.constant(-32768))
    await fc.assert(
      fc.asyncProperty(fc.array(heightM, { minLength: 12, maxLength: 12 }), async (heights) => {
        const back = await roundTrip(grid(Int16Array.from(heights), 4, -32768))
        expect([...back.heights].map((h) => (h === back.noData ? -32768 : h))).toEqual(heights)
      }),
      { numRuns: 20 },
    )
    const fine = await roundTrip(grid(Float32Array.of(812.344, Number.NaN, 8848.86, -430.5), 2))
    // Half a centimetre, and what a float of eight thousand cannot hold.
    for (const [i, h] of [812.344, Number.NaN, 8848.86, -430.5].entries())
      if (Number.isNaN(h)) expect(fine.heights[i]).toBeNaN()
      else expect(Math.abs(fine.heights[i]! - h)).toBeLessThan(0.0056)
    expect([fine.columns, fine.rows, fine.transform, fine.crs]).toEqual([
      2,
      2,
      TRANSFORM,
      { kind: 'geographic' },
    ])
  })

  test('leave the plan that is opened small, and are files of their own then', async () => {
    const plan = { ...EMPTY_PLAN, title: 'Ridge net' }
    const text = await formatWithElevations(plan, [grid(Int16Array.of(1, 2, 3, 4), 2)])
    const parsed = parsePlan(text)
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
    const { plan: opened, grids } = takeElevationsOut(parsed.value)
    expect(opened.unknown?.file).toEqual({})
    expect(grids.map(({ name }) => name)).toEqual(['N46E011.hgt.heights.json'])
    const read = await readElevationGrid(asFile(grids[0]!.text))
    expect(read.ok && read.value && [...read.value.heights]).toEqual([1, 2, 3, 4])
    // Elsewhere they say nothing.
    const far = { westDeg: 20, southDeg: 10, eastDeg: 21, northDeg: 11 }
    expect(await readElevationGrid(asFile(grids[0]!.text), far)).toEqual({ ok: true, value: null })
  })

  test('that are torn, or would unpack to more than they say, are refused', async () => {
    const packed = await packGrid(grid(Int16Array.of(1, 2, 3, 4), 2))
    for (const text of [
      '{',
      'null',
      JSON.stringify({ ...packed, columns: 3 }),
      JSON.stringify({ ...packed, columns: 1 }),
      JSON.stringify({ ...packed, columns: 1e9 }),
      JSON.stringify({ ...packed, unitM: 0 }),
      JSON.stringify({ ...packed, deltas: 'AAAA' }),
      JSON.stringify({ ...packed, crs: { kind: 'utm', zone: 99, south: false } }),
      JSON.stringify({ ...packed, transform: {} }),
    ])
      expect((await readElevationGrid(asFile(text))).ok, text.slice(0, 80)).toBe(false)
  })
})
