import type { Point } from '../../figure/geometry'
import { type Shape, scaled, shifted, stroke } from './scene'
import { setText, textShapes } from './set-text'

/** A piece of a card, as wide as the card's text: it is never parted. */
export interface Part {
  readonly heightMm: number
  /** From the piece's own upper left corner. */
  readonly shapes: readonly Shape[]
  /** Stays with what follows it. */
  readonly leads?: true
}

/** Letters on a card, mm an em: what a lamp in the rain still shows. */
const TEXT_MM = 2.6
const HEAD_MM = 3.1
const BETWEEN_MM = 1
const MOST_LINES = 12

export function headingPart(text: string, widthMm: number): Part {
  const set = setText(text, widthMm, HEAD_MM, true)
  const foot = BETWEEN_MM + set.heightMm + 0.5
  return {
    heightMm: foot + 0.8,
    shapes: [
      ...textShapes(set, [0, BETWEEN_MM]),
      stroke(
        [
          [0, foot],
          [widthMm, foot],
        ],
        0.3,
      ),
    ],
    leads: true,
  }
}

export function textPart(text: string, widthMm: number, isBold = false): Part {
  const set = setText(text, widthMm, TEXT_MM, isBold)
  return { heightMm: set.heightMm + BETWEEN_MM * 0.4, shapes: textShapes(set, [0, 0]) }
}

/** Long words as pieces of some lines each, so that they can go over to another card. */
export function textParts(text: string, widthMm: number, isBold = false): readonly Part[] {
  const { lines } = setText(text, widthMm, TEXT_MM, isBold)
  const pieces = Math.ceil(lines.length / MOST_LINES)
  return Array.from({ length: pieces }, (_, i) =>
    textPart(lines.slice(i * MOST_LINES, (i + 1) * MOST_LINES).join(' '), widthMm, isBold),
  )
}

/** Pieces that go over to the next card together. */
export const kept = (parts: readonly Part[]): readonly Part[] =>
  parts.map((part, i) => (i < parts.length - 1 ? { ...part, leads: true } : part))

/** A row of a table; each cell is broken within its column. @param widthsMm with the gap after each column */
export function rowPart(
  cells: readonly string[],
  widthsMm: readonly number[],
  { isHead = false }: { readonly isHead?: boolean } = {},
): Part {
  const gapMm = 1.5
  const sets = cells.map((cell, i) => setText(cell, widthsMm[i]! - gapMm, TEXT_MM, isHead))
  const heightMm = Math.max(...sets.map((set) => set.heightMm)) + 0.7
  const lefts = widthsMm.map((_, i) => widthsMm.slice(0, i).reduce((sum, mm) => sum + mm, 0))
  const widthMm = widthsMm.reduce((sum, mm) => sum + mm, 0)
  return {
    heightMm: heightMm + 0.3,
    shapes: [
      ...sets.flatMap((set, i) => textShapes(set, [lefts[i]!, 0.2])),
      stroke(
        [
          [0, heightMm],
          [widthMm, heightMm],
        ],
        isHead ? 0.3 : 0.2,
      ),
    ],
    ...(isHead && { leads: true }),
  }
}

/** Pieces dealt out to cards of one height, in order; what leads goes over with what it leads. */
export function dealOut(parts: readonly Part[], roomMm: number): readonly (readonly Part[])[] {
  const cards: Part[][] = [[]]
  let freeMm = roomMm
  const leastMm = (i: number): number => {
    const part = parts[i]
    return part ? part.heightMm + (part.leads ? leastMm(i + 1) : 0) : 0
  }
  for (const [i, part] of parts.entries()) {
    if (leastMm(i) > freeMm && cards.at(-1)!.length > 0 && !parts[i - 1]?.leads) {
      cards.push([])
      freeMm = roomMm
    }
    cards.at(-1)!.push(part)
    freeMm -= part.heightMm
  }
  return cards
}

/** Pieces one below the other from a place on. */
export function stacked(parts: readonly Part[], [x, top]: Point): readonly Shape[] {
  let y = top
  return parts.flatMap((part) => {
    const shapes = shifted(part.shapes, [x, y])
    y += part.heightMm
    return shapes
  })
}

/** The same piece in smaller letters; its strokes keep their width, which a copier needs. */
export const smaller = (part: Part, factor: number): Part => ({
  ...part,
  heightMm: part.heightMm * factor,
  shapes: part.shapes.map((shape) => scaled(shape, factor)),
})
