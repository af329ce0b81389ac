import { BEND_RADIUS } from '../../figure/line-signs'
import type { Lay, Line } from '../../plan/plan'
import { hasRoomForBends, isIn } from '../view/line-path'
import type { DrawBox, Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'
import { legStrokes } from './leg-strokes'

/** What is picked of a line. */
export interface LineLook {
  /** Null: the line is not selected; none: all of it is. */
  readonly legs: readonly number[] | null
  /** Its circuit is selected. */
  readonly inCircuit: boolean
  /** It leads from one board to another. */
  readonly isTrunk: boolean
  /** The bend in hand, or −1. */
  readonly bend: number
}

/** Legs shorter than this on the screen have no room for a handle at their middle, px. */
const LEAST_HANDLE_PX = 60
/** What is shorter than this nobody sees, px. */
const LEAST_PX = 1

/**
 * A line from the ground up: paper under the wire, the glow of what is selected, the wire, one path for each lay; its handles, its
 * bends. What is out of the box, or smaller than a pixel, is not drawn.
 */
export function lineStrokes(line: Line, whole: readonly Point[], look: LineLook, box: DrawBox): SVGElement[] {
  const { path, lays } = seenCorners(line, whole)
  const isPicked = (leg: number) =>
    look.inCircuit || (look.legs !== null && (look.legs.length === 0 || look.legs.includes(leg)))
  const halo: string[] = []
  const byLay = new Map<Lay, { wire: string; ticks: string }>()
  let before = { lay: '', end: '' }
  for (const [i, lay] of lays.entries()) {
    const { wire, ticks } = legStrokes(path[i]!, path[i + 1]!, lay, box)
    if (!wire) continue
    const [start, end] = wire.slice(1).split('L') as [string, string]
    // A leg that goes on from the one before carries its stroke on.
    halo.push(before.end === start ? `L${end}` : wire)
    const own = byLay.get(lay) ?? { wire: '', ticks: '' }
    own.wire += before.end === start && before.lay === lay ? `L${end}` : wire
    own.ticks += ticks
    byLay.set(lay, own)
    before = { lay, end }
  }
  if (halo.length === 0) return []
  const showsBends = look.legs !== null || look.bend >= 0 || hasRoomForBends(whole)
  return [
    svgElement('path', { class: 'wire-halo', d: halo.join('') }),
    ...line.legs.flatMap(({ lay }, i) => {
      const d = isPicked(i) ? legStrokes(whole[i]!, whole[i + 1]!, lay, box).wire : ''
      return d ? [svgElement('path', { class: 'leg-picked', d })] : []
    }),
    ...[...byLay].flatMap(([lay, { wire, ticks }]) => [
      svgElement('path', { class: `wire wire-${lay}`, d: wire }),
      // A trunk shows paper along its middle: two strokes, as for a thing that carries others' calls.
      ...(look.isTrunk ? [svgElement('path', { class: 'trunk-core', d: wire })] : []),
      ...(ticks ? [svgElement('path', { class: 'wire-ticks', d: ticks })] : []),
    ]),
    ...(look.legs ? handlesOf(whole) : []),
    ...(showsBends ? whole : [])
      .slice(1, -1)
      .flatMap((at, i) => (isIn(box, at) ? [bendRing(at, i === look.bend)] : [])),
  ]
}

/** The corners of a line that can be told apart, and how it lies between them: legs shorter than a pixel go into the next. */
function seenCorners(line: Line, path: readonly Point[]): { path: readonly Point[]; lays: readonly Lay[] } {
  const seen = [path[0]!]
  const lays: Lay[] = []
  for (const [i, { lay }] of line.legs.entries()) {
    const [last, next] = [seen.at(-1)!, path[i + 1]!]
    const isLast = i === line.legs.length - 1
    if (Math.hypot(next.x - last.x, next.y - last.y) < LEAST_PX && !(isLast && seen.length > 1)) continue
    seen.push(next)
    lays.push(lay)
  }
  return { path: seen, lays }
}

export function bendRing({ x, y }: Point, inHand = false): SVGElement {
  const look = inHand ? { class: 'bend picked', r: BEND_RADIUS + 2 } : { class: 'bend', r: BEND_RADIUS }
  return svgElement('circle', { ...look, cx: x.toFixed(1), cy: y.toFixed(1) })
}

const handlesOf = (path: readonly Point[]): SVGElement[] =>
  path.slice(1).flatMap((to, i) => {
    const from = path[i]!
    if (Math.hypot(to.x - from.x, to.y - from.y) < LEAST_HANDLE_PX) return []
    return [
      svgElement('circle', { class: 'leg-middle', cx: (from.x + to.x) / 2, cy: (from.y + to.y) / 2, r: 3 }),
    ]
  })
