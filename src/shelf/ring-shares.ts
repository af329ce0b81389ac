import { planeAbout } from '../geo/plane'
import type { Position } from '../geo/position'
import { APART_M, closeStretches } from '../route/apart'
import type { Country } from './country'
import type { CircuitDesign } from './net-design'
import type { Edge } from './net-shapes'

/** Where two ways end at one station they may run together so far, m: as for the rings that are drawn on the map. */
const ENDS_M = 3 * APART_M

/** Ways are looked at in steps of half of this, m. */
const CELL_M = 10

/** Two lines of a ring that lie within 50 m of each other, and for how far, m. */
export interface SharedStretch {
  readonly lines: readonly [Edge, Edge]
  readonly lengthM: number
}

/** What the lines of a ring share, so that one break could cut two of them; the longest first. Null where nobody knows where they lie. */
export function ringShares(country: Country, { edges }: CircuitDesign): readonly SharedStretch[] | null {
  if (country.isMadeUp) return null
  const plane = planeAbout(edges.flatMap(({ edge }) => edge.map(country.positionOf)))
  const toCells = (position: Position) => {
    const [eastM, northM] = plane.toPlane(position)
    return [eastM / CELL_M, northM / CELL_M] as const
  }
  const ways = edges.map(({ edge }) => {
    const { from, bends, to } = country.way(...edge)
    return { edge, points: [from, ...bends, to].map(toCells) }
  })
  return ways
    .flatMap((one, i) =>
      ways.slice(i + 1).flatMap((two): readonly SharedStretch[] => {
        const { stretches, length } = closeStretches(one.points, two.points, APART_M / CELL_M)
        const isShared = (end: 0 | 1) => two.edge.includes(one.edge[end])
        const endCells = ENDS_M / CELL_M
        const [first, last] = [isShared(0) ? endCells : 0, isShared(1) ? length - endCells : length]
        const lengthM =
          CELL_M *
          stretches.reduce(
            (sum, { from, to }) => sum + Math.max(0, Math.min(to, last) - Math.max(from, first)),
            0,
          )
        return lengthM > 0 ? [{ lines: [one.edge, two.edge], lengthM }] : []
      }),
    )
    .sort((a, b) => b.lengthM - a.lengthM)
}
