import type { Box, Point } from '../../figure/geometry'
import type { Block } from '../layout/block'
import type { PageSize } from '../layout/paper-size'
import { type Shape, shifted } from './scene'

/** ISO 216 A6, mm: a card. */
const CARD: PageSize = { widthMm: 105, heightMm: 148 }

/** One card, from its own upper left corner. */
export type Card = readonly Shape[]

/** Size of the cards that lie on a sheet. */
export const cardSizeOn = (page: PageSize): PageSize => cardsOn(page).size

/** A card is a quarter of a large sheet, or A6, whichever is less high; a small sheet is one card. */
function cardsOn(page: PageSize): { readonly size: PageSize; readonly boxes: readonly Box[] } {
  const across = page.widthMm >= 2 * CARD.widthMm ? 2 : 1
  const down = across
  const size = {
    widthMm: page.widthMm / across,
    heightMm: Math.min(CARD.heightMm, page.heightMm / down),
  }
  const firstTop = (page.heightMm - down * size.heightMm) / 2
  return {
    size,
    boxes: Array.from({ length: across * down }, (_, i) => {
      const left = (i % across) * size.widthMm
      const top = firstTop + Math.floor(i / across) * size.heightMm
      return { left, top, right: left + size.widthMm, bottom: top + size.heightMm }
    }),
  }
}

/** Where a sheet of four is cut: its outer edges are the cards' own. */
const cross = ({ widthMm, heightMm }: PageSize): readonly Shape[] =>
  [
    [
      [widthMm / 2, 0],
      [widthMm / 2, heightMm],
    ],
    [
      [0, heightMm / 2],
      [widthMm, heightMm / 2],
    ],
  ].map((points) => ({
    kind: 'way',
    points: points as unknown as readonly Point[],
    strokeMm: 0.2,
    dashMm: [1, 2],
  }))

/** Things dealt out to so many sheets, so that none has less than another but by one. */
export function dealtEvenly<T>(things: readonly T[], sheets: number): readonly (readonly T[])[] {
  const from = (sheet: number) => Math.ceil((sheet * things.length) / sheets)
  return Array.from({ length: sheets }, (_, sheet) => things.slice(from(sheet), from(sheet + 1)))
}

/** Cards laid on sheets, with lines to cut them by where a sheet holds several. */
export function cardSheets(
  page: PageSize,
  label: string,
  cards: readonly Card[],
): readonly (readonly Block[])[] {
  const { boxes } = cardsOn(page)
  const sheets = Math.ceil(cards.length / boxes.length)
  return dealtEvenly(cards, sheets).map((own, sheet) => {
    const scene = {
      widthMm: page.widthMm,
      heightMm: page.heightMm,
      label: `${label}, sheet ${sheet + 1} of ${sheets}`,
      shapes: [
        ...(boxes.length > 1 ? cross(page) : []),
        ...own.flatMap((shapes, i) => shifted(shapes, [boxes[i]!.left, boxes[i]!.top])),
      ],
    }
    return [{ kind: 'drawing', heightMm: page.heightMm, drawing: { kind: 'scene', scene } }]
  })
}
