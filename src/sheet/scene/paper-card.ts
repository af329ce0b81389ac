import type { Picture } from '../../figure/code-picture'
import { isolated } from '../../isolated'
import type { PageSize } from '../layout/paper-size'
import type { PaperSource } from '../paper-source'
import { dealOut, type Part, smaller, stacked } from './card-parts'
import { type Card, cardSizeOn } from './card-sheets'
import { PICTURE_MM, type Shape, stroke } from './scene'
import { fitText, setText, textShapes } from './set-text'

const EDGE_MM = 4.6
const HEAD_MM = 17
const FOOT_MM = 0.5

/** What stands large at the top of a card, the place or the like below it, and a code that stands at its foot where that is free. */
interface CardHead {
  readonly name: string
  readonly place?: string
  readonly code?: CardCode | undefined
}

interface CardCode {
  readonly picture: Picture
  readonly words: string
}

/** A module of a code is so wide, mm: a telephone reads that from a hand's breadth away (common practice). */
const MODULE_MM = 0.336
/** Kept free above a code and beside it, mm. */
const CLEAR_MM = 2
const WORD_MM = 2.6

/** Pieces as cards, as few as hold them, each with its head. A card is a quarter of a large sheet, or A6. */
export function paperCards(
  source: PaperSource,
  page: PageSize,
  about: CardHead,
  partsIn: (widthMm: number) => readonly Part[],
): readonly Card[] {
  const size = cardSizeOn(page)
  const widthMm = size.widthMm - 2 * EDGE_MM
  const roomMm = size.heightMm - 2 * EDGE_MM - HEAD_MM - FOOT_MM
  const cards = onFewestCards(partsIn, widthMm, roomMm)
  return cards.map((parts, i) => [
    ...head(source, about, widthMm, cards.length > 1 ? `card ${i + 1} of ${cards.length}` : ''),
    ...stacked(parts, [EDGE_MM, EDGE_MM + HEAD_MM]),
    ...(i === cards.length - 1 && about.code ? foot(about.code, size, heightOf(parts)) : []),
  ])
}

const heightOf = (parts: readonly Part[]): number => parts.reduce((sum, { heightMm }) => sum + heightMm, 0)

/** The code in the lower right corner and what it opens beside it, where nothing stands. */
function foot({ picture, words }: CardCode, size: PageSize, usedMm: number): readonly Shape[] {
  const sizeMm = picture.side * MODULE_MM
  const top = size.heightMm - EDGE_MM - sizeMm
  if (EDGE_MM + HEAD_MM + usedMm + CLEAR_MM > top) return []
  const left = size.widthMm - EDGE_MM - sizeMm
  const said = setText(words, left - EDGE_MM - CLEAR_MM, WORD_MM)
  return [
    { kind: 'code', at: [left, top], sizeMm, picture },
    ...textShapes(said, [EDGE_MM, top + sizeMm - said.heightMm - CLEAR_MM]),
  ]
}

/** In letters so much smaller, 2.1 mm an em, a station may have one card less. */
const SMALLER = 0.81

/** Pieces dealt out to cards, in smaller letters where that saves a card. */
function onFewestCards(partsIn: (widthMm: number) => readonly Part[], widthMm: number, roomMm: number) {
  const usual = dealOut(partsIn(widthMm), roomMm)
  if (usual.length === 1) return usual
  const small = dealOut(partsIn(widthMm / SMALLER), roomMm / SMALLER)
  return small.length < usual.length
    ? small.map((parts) => parts.map((part) => smaller(part, SMALLER)))
    : usual
}

function head(
  { plan, fingerprint, date }: PaperSource,
  { name, place }: CardHead,
  widthMm: number,
  which: string,
): readonly Shape[] {
  const textMm = widthMm - PICTURE_MM - 2
  const large = fitText(name, { widthMm: textMm, heightMm: 8 }, [5, 2.1], true)
  const basis = [place, isolated(plan.title), `plan\u00a0${fingerprint}`, which]
  const below = fitText(basis.filter(Boolean).join(' · '), { widthMm: textMm, heightMm: 6 }, [2.4, 1.5])
  return [
    ...textShapes(large, [EDGE_MM, EDGE_MM - 0.5]),
    ...textShapes(below, [EDGE_MM, EDGE_MM + 7.7]),
    {
      kind: 'text',
      text: date,
      at: [EDGE_MM, EDGE_MM + HEAD_MM - 2],
      anchor: 'start',
      sizeMm: 2.1,
      isRevised: true,
    },
    { kind: 'picture', at: [EDGE_MM + widthMm - PICTURE_MM, EDGE_MM - 0.5], sizeMm: PICTURE_MM },
    stroke(
      [
        [EDGE_MM, EDGE_MM + HEAD_MM - 1.2],
        [EDGE_MM + widthMm, EDGE_MM + HEAD_MM - 1.2],
      ],
      0.5,
    ),
  ]
}
