import { PLATE, SIGN_STROKES, type StationSign } from '../../figure/station-signs'
import type { Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'

/** What a symbol says of its station, or of some station among those gathered under it. */
export interface Marks {
  readonly sign: StationSign
  readonly isFailing: boolean
  readonly isSelected: boolean
  /** Wire is only joined here: nobody listens. */
  readonly isJoint: boolean
}

/** The sign of one station: a terminal block, or a joint where nobody listens. */
export const stationSign = (at: Point, marks: Marks): SVGElement[] =>
  marks.isJoint ? jointOf(at, marks) : blockOf(at, marks)

const plate = (name: string, { x, y }: Point, width: number, height: number, rx: number): SVGElement =>
  svgElement('rect', {
    class: name,
    x: (x - width / 2).toFixed(1),
    y: (y - height / 2).toFixed(1),
    width,
    height,
    rx,
  })

/** A path whose steps are relative, begun at a place beside a symbol's middle. */
const strokes = (
  name: string,
  { x, y }: Point,
  ...from: readonly (readonly [number, number, string])[]
): SVGElement =>
  svgElement('path', {
    class: name,
    d: from.map(([dx, dy, steps]) => `M${(x + dx).toFixed(1)} ${(y + dy).toFixed(1)}${steps}`).join(''),
  })

/** The terminal block with its sign; the mark of a failure and the ring of the selection. */
const blockOf = (at: Point, { sign, isFailing, isSelected }: Marks): SVGElement[] => [
  ...(isSelected ? [plate('ring', at, 36, 28, 8)] : []),
  plate('block', at, PLATE.width, PLATE.height, PLATE.rounding),
  strokes(SIGN_STROKES[sign].look === 'dots' ? 'posts' : 'cross', at, ...SIGN_STROKES[sign].from),
  ...(isFailing ? [failMark(at)] : []),
]

/** A joint: a splice in its sleeve, smaller than anything that somebody answers. */
const jointOf = (at: Point, { isSelected }: Marks): SVGElement[] => [
  ...(isSelected ? [plate('ring', at, 30, 24, 8)] : []),
  plate('joint', at, 12, 12, 6),
  plate('joint-core', at, 4, 4, 2),
]

/** How many stations stand here, too near each other to be told apart; marked where one of them fails. */
export function countSign(at: Point, count: number, { isFailing }: Marks): SVGElement[] {
  const words = svgElement('text', {
    x: at.x.toFixed(1),
    y: (at.y + 4.5).toFixed(1),
    'text-anchor': 'middle',
  })
  words.textContent = String(count)
  return [plate('count-plate', at, 34, 24, 12), words, ...(isFailing ? [failMark(at)] : [])]
}

const failMark = (at: Point): SVGElement =>
  strokes('fail-mark', at, [9, -15, 'h10v10h-10z'], [11.5, -12.5, 'l5 5m0 -5l-5 5'])
