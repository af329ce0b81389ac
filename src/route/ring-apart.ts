import { closeStretches, costAlong, dearerIn, markBand } from './apart'
import type { CostGrid } from './cost-grid'
import { leastCostPath } from './least-cost-path'
import type { Link } from './net-shapes'
import type { CellPoint } from './raster-walk'

/** A stretch that two lines of a ring share: one breakage there takes both. */
export interface CloseWays {
  /** Indices of the two lines. */
  readonly links: readonly [number, number]
  /** How long it is, and where its middle lies, in cells of the grid. */
  readonly length: number
  readonly at: CellPoint
}

/** How much dearer the ground beside the other lines is: a way round takes up to so many times the stretch that it avoids. */
const DEARER = 12
/** Where two lines end at one station they may run together, in distances that they else keep. */
const ENDS = 3
/** Each line is led anew so often; the lines of a ring seldom need a second round. */
const ROUNDS = 3

/** A ring's places by their cells, and how a path of cells is drawn. */
interface Ring {
  readonly grid: CostGrid
  readonly places: readonly number[]
  readonly links: readonly Link[]
  readonly apartM: number
  /** On the very ground that the path was sought on: elsewhere a straight line could cut through what it goes round. */
  readonly smooth: (grid: CostGrid, cells: readonly number[], link: Link) => CellPoint[]
}

interface Led {
  readonly cells: readonly number[]
  readonly way: readonly CellPoint[]
}

/**
 * Leads the lines of a ring so that no two come closer than asked, but where they meet at a station, one line after the other around those that lie, until
 * nothing gets better; and what two still share.
 */
export function keepApart(ring: Ring): {
  readonly ways: readonly (readonly CellPoint[])[]
  readonly cost: number
  readonly close: readonly CloseWays[]
} {
  const { grid, places, links } = ring
  const led: Led[] = links.map((link) => {
    const path = leastCostPath(grid, places[link[0]]!, places[link[1]]!)
    const cells = path?.cells ?? []
    return { cells, way: ring.smooth(grid, cells, link) }
  })
  const sharedBy = (i: number, own: Led) =>
    led.reduce(
      (sum, other, j) => (j === i ? sum : sum + lengthOf(closeBetween(ring, [i, own], [j, other]))),
      0,
    )
  for (let round = 0; round < ROUNDS; round++) {
    let isBetter = false
    for (const [i, link] of links.entries()) {
      const before = sharedBy(i, led[i]!)
      if (before === 0) continue
      const beside = besideOthers(ring, led, i)
      const path = leastCostPath(beside, places[link[0]]!, places[link[1]]!)
      if (!path) continue
      const next = { cells: path.cells, way: ring.smooth(beside, path.cells, link) }
      if (sharedBy(i, next) >= before) continue
      led[i] = next
      isBetter = true
    }
    if (!isBetter) break
  }
  const close = led.flatMap((own, i) =>
    led.flatMap((other, j) => (j > i ? closeBetween(ring, [i, own], [j, other]) : [])),
  )
  const cost = led.reduce((sum, { cells }) => sum + costAlong(grid, cells), 0)
  return { ways: led.map(({ way }) => way), cost, close }
}

const lengthOf = (close: readonly CloseWays[]): number => close.reduce((sum, { length }) => sum + length, 0)

/** The ground as one line sees it, dear beside all others. */
function besideOthers({ grid, places, links, apartM }: Ring, led: readonly Led[], own: number): CostGrid {
  const band = new Uint8Array(grid.perM.length)
  for (const [j, { cells }] of led.entries()) {
    if (j === own) continue
    const common = links[own]!.filter((place) => links[j]!.includes(place))
    // Half a cell more: what is drawn straight may cut a corner.
    const withinM = apartM + grid.cellM
    markBand(
      grid,
      band,
      cells,
      withinM,
      common.map((place) => ({ cell: places[place]!, withinM: ENDS * apartM })),
    )
  }
  return dearerIn(grid, band, DEARER)
}

/** The stretches that one line shares with another, but for the ground about a station at which both end. */
function closeBetween(
  { grid, places, links, apartM }: Ring,
  [i, own]: [number, Led],
  [j, other]: [number, Led],
): CloseWays[] {
  const common = links[i]!.filter((place) => links[j]!.includes(place)).map((place) => places[place]!)
  const { stretches } = closeStretches(own.way, other.way, apartM / grid.cellM)
  return stretches.flatMap(({ from, to }): CloseWays[] => {
    const parts = outside(own.way, from, to, common, grid.columns, (ENDS * apartM) / grid.cellM)
    return parts.map((part) => ({ links: [i, j], ...part }))
  })
}

/** A look along a way, in cells. */
const LOOK = 0.5

/** The parts of a stretch that lie farther from some cells than a radius, each with its length and middle. */
function outside(
  way: readonly CellPoint[],
  from: number,
  to: number,
  cells: readonly number[],
  columns: number,
  radius: number,
): { length: number; at: CellPoint }[] {
  const parts: { start: number; end: number }[] = []
  let isOpen = false
  const count = Math.max(1, Math.ceil((to - from) / LOOK))
  for (let k = 0; k <= count; k++) {
    const along = from + ((to - from) * k) / count
    const [x, y] = pointAt(way, along)
    const isFree = cells.some((cell) => {
      const [cx, cy] = [(cell % columns) + 0.5, Math.floor(cell / columns) + 0.5]
      return Math.hypot(x - cx, y - cy) < radius
    })
    const last = parts.at(-1)
    if (!isFree && isOpen && last) last.end = along
    else if (!isFree) parts.push({ start: along, end: along })
    isOpen = !isFree
  }
  // A single look is the edge of a circle, or a crossing: both ways are cut there all the same.
  return parts.map(({ start, end }) => ({ length: end - start, at: pointAt(way, (start + end) / 2) }))
}

function pointAt(way: readonly CellPoint[], along: number): CellPoint {
  let left = along
  for (let i = 0; i + 1 < way.length; i++) {
    const [[ax, ay], [bx, by]] = [way[i]!, way[i + 1]!]
    const length = Math.hypot(bx - ax, by - ay)
    if (left <= length || i + 2 === way.length) {
      const t = length > 0 ? Math.min(1, left / length) : 0
      return [ax + (bx - ax) * t, ay + (by - ay) * t]
    }
    left -= length
  }
  return way[0]!
}
