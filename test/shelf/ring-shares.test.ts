import { expect, test } from 'vitest'
import { shelfOf } from '../../src/files/parse-shelf'
import { type PlanePoint, planeAbout } from '../../src/geo/plane'
import type { Position } from '../../src/geo/position'
import { countryOf } from '../../src/shelf/country'
import type { Edge } from '../../src/shelf/net-shapes'
import { ringShares } from '../../src/shelf/ring-shares'

const MIDDLE = planeAbout([[9, 47]])
const at = (point: PlanePoint) => MIDDLE.toPosition(point) as Position

/** A square of 2 km, whose ways from a to b and from c to d both lead through one gap, or do not. */
const CORNERS = [
  [-1000, -1000],
  [1000, -1000],
  [1000, 1000],
  [-1000, 1000],
] as const

function sharesOf(gap: boolean) {
  const shelf = shelfOf({
    places: CORNERS.map((corner, k) => {
      const [lon, lat] = at(corner)
      return { id: `p${k}`, lon, lat }
    }),
    have: { wires: [{ wire: 'wd-1a', lengthM: 1609, count: 20 }], sets: [{ set: 'crank-1600', count: 4 }] },
  })
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  // Both lie 10 m off the middle for 200 m there.
  const through = (side: number) => [at([-100, side]), at([100, side])]
  const isSouth = (...ends: Position[]) => ends.every(([, lat]) => lat < 47)
  const isNorth = (...ends: Position[]) => ends.every(([, lat]) => lat > 47)
  const country = countryOf(shelf.value, {
    knownWays: (from, to) => {
      const bends = gap && isSouth(from, to) ? through(-10) : gap && isNorth(from, to) ? through(10) : []
      const inOrder = from[0] < to[0] ? bends : bends.toReversed()
      return { bends: inOrder, lays: [...inOrder, 0].map(() => 'surface' as const) }
    },
  })
  const ring: readonly Edge[] = [
    [0, 1],
    [1, 2],
    [2, 3],
    [0, 3],
  ]
  return ringShares(country, {
    edges: ring.map((edge) => ({ edge, run: 0 })),
    sets: new Map([0, 1, 2, 3].map((p) => [p, 0])),
    supply: null,
  })
}

test('a ring of a square shares nothing; one of which two lines go through one gap names them, and how far', () => {
  expect(sharesOf(false)).toEqual([])
  const [shared] = sharesOf(true)!
  expect(shared!.lines).toEqual([
    [0, 1],
    [2, 3],
  ])
  // 200 m side by side, and beyond each end x m east, until the other way's bend is 50 m off: x² + (20 + 1.1 x)² = 50².
  const x = (-44 + Math.sqrt(44 ** 2 + 4 * 2.21 * 2100)) / (2 * 2.21)
  // Looked at every 5 m.
  expect(Math.abs(shared!.lengthM - (200 + 2 * x * Math.hypot(1, 1.1)))).toBeLessThan(10)
})
