import type { Box, Point } from '../../figure/geometry'
import type { Shape } from './scene'

/** One notch in the edge of a tag: a long one counts five, a short one counts one. */
type Notch = 'long' | 'short'

/** What a line's and a tag's number are counted round by: more notches than this no thumb counts. */
const LINES_ROUND = 10
const TAGS_ROUND = 20

/** Notches of a number, the long ones first: 7 is a long one and two short ones. */
const notchesOf = (number: number, round: number): readonly Notch[] => {
  const count = ((number - 1) % round) + 1
  return [
    ...new Array<Notch>(Math.floor(count / 5)).fill('long'),
    ...new Array<Notch>(count % 5).fill('short'),
  ]
}

/**
 * What tells a tag in the dark, by the thumb: along the top edge the line's number, along the bottom edge the tag's; the cut corner is at the upper left.
 * Lines are counted round by ten, tags by twenty: line 13 has the notches of line 3.
 */
export const notchCode = (
  line: number,
  tag: number,
): { readonly top: readonly Notch[]; readonly bottom: readonly Notch[] } => ({
  top: notchesOf(line, LINES_ROUND),
  bottom: notchesOf(tag, TAGS_ROUND),
})

const PITCH_MM = 6
const WIDTH_MM = 2.6
const CORNER_MM = 6

/** How deep the notches go on a label of this height, mm: a thumb tells twice as deep. */
export const notchDepthMm = (heightMm: number): number => Math.min(5, heightMm * 0.14)

/** The notches, and the corner, as they are to be cut from a label: all that is black along its edges. */
export function notchShapes({ left, top, right, bottom }: Box, line: number, tag: number): readonly Shape[] {
  const deepMm = notchDepthMm(bottom - top)
  const code = notchCode(line, tag)
  const most = Math.max(code.top.length, code.bottom.length)
  const first = left + CORNER_MM + 3
  const pitchMm = Math.min(PITCH_MM, (right - first - WIDTH_MM) / Math.max(1, most))
  const black = (points: readonly Point[]): Shape => ({
    kind: 'way',
    points,
    isClosed: true,
    strokeMm: 0,
    filling: 'ink',
  })
  const row = (notches: readonly Notch[], edge: number, inward: 1 | -1) =>
    notches.map((notch, i) => {
      const x = first + i * pitchMm
      const depth = inward * (notch === 'long' ? deepMm : deepMm / 2)
      return black([
        [x, edge],
        [x + WIDTH_MM, edge],
        [x + WIDTH_MM, edge + depth],
        [x, edge + depth],
      ])
    })
  const corner = Math.min(CORNER_MM, deepMm + 1)
  return [
    black([
      [left, top],
      [left + corner, top],
      [left, top + corner],
    ]),
    ...row(code.top, top, 1),
    ...row(code.bottom, bottom, -1),
  ]
}

/** How the notches are read, for whoever has never seen them. */
export const NOTCH_WORDS = [
  'To read a tag in the dark: hold it with the cut corner at the upper left.',
  'Top edge: the line. Bottom edge: the tag. A long notch counts five, a short one counts one.',
  `Lines start again after ${LINES_ROUND}, tags after ${TAGS_ROUND}.`,
  'Cut out all that is black along the edges.',
] as const
