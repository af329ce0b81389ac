import { expect, test } from 'vitest'
import type { ElevationGrid } from '../../src/terrain/elevation-grid'
import { extentOf } from '../../src/terrain/grid-extent'

test('a grid reaches to the outer edges of its cells, half a cell beyond their middles', () => {
  const grid: ElevationGrid = {
    name: 'two by three',
    crs: { kind: 'geographic' },
    columns: 2,
    rows: 3,
    transform: { x0: 10, xPerColumn: 1, xPerRow: 0, y0: 50, yPerColumn: 0, yPerRow: -1 },
    heights: new Float32Array(6),
  }
  expect(extentOf(grid)).toEqual({ westDeg: 9.5, eastDeg: 11.5, northDeg: 50.5, southDeg: 47.5 })
})
