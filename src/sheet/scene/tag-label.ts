import type { Box } from '../../figure/geometry'
import { NOTCH_WORDS, notchDepthMm, notchShapes } from './notch-code'
import { PICTURE_MM, type Shape, stroke } from './scene'
import { fitText, textShapes } from './set-text'

/** What stands on one tag. */
export interface TagWords {
  readonly lineNumber: number
  readonly tagNumber: number
  /** `4/2`. */
  readonly name: string
  readonly place: string
  /** Which pair carries which circuit. */
  readonly pairs: string
  readonly lineName: string
  /** `4/1 478 m`; empty at an end of the line. */
  readonly previous: string
  readonly next: string
}

const PAD_MM = 2.2
const GAP_MM = 0.8
/** Largest and smallest letters of each part, mm an em. */
const NAME_MM = [9, 5] as const
const WAY_MM = [3.4, 2] as const
const PLACE_MM = [3.6, 2] as const
const DATE_MM = 1.7
const WORDS_MM = [2.8, 2] as const

/** One label: line and tag large, what is before and after it, the place, the pairs; notches along its edges. */
export function tagLabel(box: Box, words: TagWords): readonly Shape[] {
  const edgeMm = notchDepthMm(box.bottom - box.top) + 0.6
  const [left, right] = [box.left + PAD_MM, box.right - PAD_MM]
  const widthMm = right - left
  const top = box.top + edgeMm
  const bottom = box.bottom - edgeMm
  const heightMm = bottom - top

  const nameMm = Math.min(NAME_MM[0], heightMm * 0.36)
  const name = fitText(
    words.name,
    { widthMm: widthMm * 0.42, heightMm: nameMm * 1.22 },
    [nameMm, NAME_MM[1] * 0.6],
    true,
  )
  const wayWidthMm = widthMm * 0.55
  const ways = [words.previous && `← ${words.previous}`, words.next && `→ ${words.next}`].filter(Boolean)
  const wayMm = (nameMm * 1.22) / 2
  const shapes: Shape[] = [
    ...notchShapes(box, words.lineNumber, words.tagNumber),
    ...textShapes(name, [left, top]),
    ...ways.flatMap((way, i) =>
      textShapes(
        fitText(way, { widthMm: wayWidthMm, heightMm: wayMm }, [
          Math.min(WAY_MM[0], wayMm / 1.22),
          WAY_MM[1] * 0.8,
        ]),
        [right, top + i * wayMm],
        'end',
      ),
    ),
  ]
  let y = top + nameMm * 1.22 + GAP_MM / 2
  const parts = [
    { text: words.place, sizes: PLACE_MM, isBold: true },
    { text: words.pairs, sizes: WORDS_MM, isBold: false },
    { text: words.lineName, sizes: WORDS_MM, isBold: false },
  ].filter(({ text }) => text)
  for (const [i, { text, sizes, isBold }] of parts.entries()) {
    // What comes after needs a line each at the least; the last one takes what is left, or is left out.
    const keptMm = (parts.length - 1 - i) * WORDS_MM[1] * 1.22
    const roomMm = bottom - y - (i === 0 ? Math.min(keptMm, heightMm * 0.2) : 0)
    if (roomMm < sizes[1] * 1.22) break
    const set = fitText(
      text,
      { widthMm, heightMm: Math.min(roomMm, i === 0 ? roomMm : sizes[0] * 1.22 * 3) },
      sizes,
      isBold,
    )
    shapes.push(...textShapes(set, [left, y]))
    y += set.heightMm + GAP_MM / 2
  }
  return shapes
}

/** The first label of a sheet: which plan it is, and how the notches are read. */
export function keyLabel(box: Box, title: string, date: string): readonly Shape[] {
  const right = box.right - PAD_MM - PICTURE_MM
  const [left, top] = [box.left + PAD_MM, box.top + PAD_MM]
  const heightMm = box.bottom - top - PAD_MM
  const head = fitText(title, { widthMm: right - left - 1, heightMm: heightMm * 0.25 }, [2.6, 1.7], true)
  const rule = top + head.heightMm + DATE_MM * 1.22
  const words = fitText(
    NOTCH_WORDS.join(' '),
    { widthMm: right - left - 1, heightMm: top + heightMm - rule - GAP_MM },
    [2.6, 1.5],
  )
  return [
    { kind: 'picture', at: [right, top], sizeMm: PICTURE_MM },
    ...textShapes(head, [left, top]),
    { kind: 'text', text: date, at: [left, rule - 0.7], anchor: 'start', sizeMm: DATE_MM, isRevised: true },
    stroke(
      [
        [left, rule],
        [right - 1, rule],
      ],
      0.2,
    ),
    ...textShapes(words, [left, rule + GAP_MM * 0.6]),
  ]
}
