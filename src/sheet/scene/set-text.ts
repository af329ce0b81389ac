import type { Point } from '../../figure/geometry'
import { textWidthEm, wrapText } from '../../figure/text-width'
import type { Shape } from './scene'

/** From one base line to the next, in ems. */
const LEADING = 1.22
/** From the top of a block of words to its first base line, in ems. */
const FIRST = 0.86

/** Words broken into lines of one size. */
export interface SetText {
  readonly lines: readonly string[]
  readonly sizeMm: number
  readonly isBold: boolean
  readonly heightMm: number
}

const setAt = (text: string, widthMm: number, sizeMm: number, isBold: boolean): SetText => {
  const lines = isolatedByLine(wrapText(text, widthMm / sizeMm, isBold))
  return { lines, sizeMm, isBold, heightMm: lines.length * LEADING * sizeMm }
}

const ISOLATE = '\u2068'
const ISOLATE_END = '\u2069'

/** Each line is a text of its own: an isolate that a line leaves open is closed at its end and opened again on the next. */
function isolatedByLine(lines: readonly string[]): readonly string[] {
  let isOpen = false
  return lines.map((line) => {
    const before = isOpen ? ISOLATE : ''
    for (const c of line) isOpen = c === ISOLATE || (isOpen && c !== ISOLATE_END)
    return before + line + (isOpen ? ISOLATE_END : '')
  })
}

/** Words set in one size, over as many lines as they take. */
export const setText = (text: string, widthMm: number, sizeMm: number, isBold = false): SetText =>
  setAt(text, widthMm, sizeMm, isBold)

/** Steps by which letters are made smaller, mm. */
const STEP_MM = 0.1

/**
 * Words in the largest letters that fit, no smaller than the least. What does not fit even then ends in dots: a paper's
 * smallest letters are as small as a lamp in the rain allows.
 */
export function fitText(
  text: string,
  room: { readonly widthMm: number; readonly heightMm: number },
  [mostMm, leastMm]: readonly [number, number],
  isBold = false,
): SetText {
  for (let sizeMm = mostMm; sizeMm > leastMm - 1e-9; sizeMm -= STEP_MM) {
    const set = setAt(text, room.widthMm, sizeMm, isBold)
    if (set.heightMm <= room.heightMm + 1e-9) return set
  }
  const whole = setAt(text, room.widthMm, leastMm, isBold)
  const count = Math.max(1, Math.floor(room.heightMm / (LEADING * leastMm) + 1e-9))
  const lines = whole.lines.slice(0, count)
  lines[count - 1] = withDots(lines[count - 1]!, room.widthMm / leastMm, isBold)
  return { ...whole, lines, heightMm: count * LEADING * leastMm }
}

function withDots(line: string, widthEm: number, isBold: boolean): string {
  const letters = [...line]
  while (letters.length > 0 && textWidthEm(`${letters.join('')}…`, isBold) > widthEm) letters.pop()
  return `${letters.join('').trimEnd()}…`
}

/** Words as shapes, the top of their block at a place. */
export const textShapes = (
  { lines, sizeMm, isBold }: SetText,
  [x, top]: Point,
  anchor: 'start' | 'middle' | 'end' = 'start',
): readonly Shape[] =>
  lines.map((text, i) => ({
    kind: 'text',
    text,
    at: [x, top + (FIRST + i * LEADING) * sizeMm],
    anchor,
    sizeMm,
    ...(isBold && { isBold }),
  }))
