import { isolated } from '../../isolated'
import type { Hazard, Station } from '../../plan/plan'
import { outlineOf } from '../tools/scene'
import type { MapView, Point } from '../view/map-view'
import { around, type NameToPlace } from './place-names'
import { TEXT_SCALE } from './text-scale'

/** Sizes of the two kinds of names, px: as the style sheet sets them, and how wide a letter is on average. */
const STATION_TEXT = { heightPx: 18 * TEXT_SCALE, letterPx: 9.2 * TEXT_SCALE }
const HAZARD_TEXT = { heightPx: 15 * TEXT_SCALE, letterPx: 6.4 * TEXT_SCALE }
/** From the middle of a station's symbol to the middle of its name, px. */
const ABOVE_PX = 22
const BELOW_PX = 21
const BESIDE_PX = 21
/** A hazard smaller than this on the screen stays without its name, px. */
const LEAST_HAZARD_PX = 36
/** A longer name goes on below; what has more lines is cut off: the panel has it whole. */
const MOST_LETTERS = 28
const MOST_LINES = 3
/** Where along a hazard its name may stand, in order of preference. */
const PARTS = [0.5, 0.25, 0.75, 0.1, 0.9]

export interface Label extends NameToPlace {
  readonly lines: readonly string[]
  readonly kind: 'station-name' | 'hazard-name'
}

/** A name in lines of so many letters, broken between words where there are any. */
export function nameLines(name: string): readonly string[] {
  const lines: string[] = []
  let rest = [...name]
  while (rest.length > MOST_LETTERS && lines.length < MOST_LINES - 1) {
    const blank = rest.lastIndexOf(' ', MOST_LETTERS)
    const end = blank > 0 ? blank : MOST_LETTERS
    lines.push(rest.slice(0, end).join(''))
    rest = rest.slice(blank > 0 ? end + 1 : end)
  }
  const last = rest.length > MOST_LETTERS ? [...rest.slice(0, MOST_LETTERS - 1), '…'] : rest
  return [...lines, last.join('')].map(isolated)
}

/** The room that lines of text take. */
const sizeOf = (lines: readonly string[], { heightPx, letterPx }: typeof STATION_TEXT) => ({
  width: Math.max(...lines.map(({ length }) => length)) * letterPx,
  height: lines.length * heightPx,
  /** From the middle of one line to the middle of all. */
  offPx: ((lines.length - 1) * heightPx) / 2,
})

export function stationLabel({ id, name }: Station, { x, y }: Point): Label {
  const lines = nameLines(name)
  const { width, height, offPx } = sizeOf(lines, STATION_TEXT)
  const [above, below] = [y - ABOVE_PX - offPx, y + BELOW_PX + offPx]
  const beside = BESIDE_PX + width / 2
  const middles = [
    { x, y: above },
    { x, y: below },
    { x: x + beside, y },
    { x: x - beside, y },
    { x: x + beside - 12, y: above },
    { x: x - beside + 12, y: above },
    { x: x + beside - 12, y: below },
    { x: x - beside + 12, y: below },
    ...[above, below].flatMap((y) => [x + width / 4, x - width / 4].map((x) => ({ x, y }))),
  ]
  const candidates = middles.map((middle) => around(middle, width, height))
  return { id, lines, kind: 'station-name', candidates }
}

export function hazardLabel(hazard: Hazard, view: MapView): Label | undefined {
  if (!hazard.name) return undefined
  const path = view.pathOf(outlineOf(hazard))
  const span = (of: (point: Point) => number) => {
    const range = path.reduce(
      ([least, most], point) => [Math.min(least, of(point)), Math.max(most, of(point))] as const,
      [Infinity, -Infinity] as readonly [number, number],
    )
    return range[1] - range[0]
  }
  if (
    Math.hypot(
      span(({ x }) => x),
      span(({ y }) => y),
    ) < LEAST_HAZARD_PX
  )
    return undefined
  const lines = nameLines(hazard.name)
  const { width, height, offPx } = sizeOf(lines, HAZARD_TEXT)
  const middles =
    hazard.geometry.type === 'Polygon' ? [middleOfRing(path)] : PARTS.map((part) => pointAtPart(path, part))
  const candidates = middles.flatMap(({ x, y }) => [
    around({ x, y: y - 13 - offPx }, width, height),
    around({ x, y: y + 15 + offPx }, width, height),
  ])
  return { id: hazard.id, lines, kind: 'hazard-name', candidates }
}

function middleOfRing(ring: readonly Point[]): Point {
  const corners = ring.slice(0, -1)
  const sum = corners.reduce((total, { x, y }) => ({ x: total.x + x, y: total.y + y }), { x: 0, y: 0 })
  return { x: sum.x / corners.length, y: sum.y / corners.length }
}

/** The point at a part 0…1 of a path's length. */
function pointAtPart(path: readonly Point[], part: number): Point {
  const lengths = path.slice(1).map((to, i) => Math.hypot(to.x - path[i]!.x, to.y - path[i]!.y))
  let left = lengths.reduce((sum, length) => sum + length, 0) * part
  for (const [i, length] of lengths.entries()) {
    if (left <= length && length > 0) {
      const [from, to] = [path[i]!, path[i + 1]!]
      return { x: from.x + ((to.x - from.x) * left) / length, y: from.y + ((to.y - from.y) * left) / length }
    }
    left -= length
  }
  return path.at(-1)!
}
