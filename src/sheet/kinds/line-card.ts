import type { UnitSystem } from '../../words/units'
import { gridNote } from '../grid-note'
import { type Block, beside, columnsMm, heightOfMm } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import { besideCode, type SheetCode } from '../layout/sheet-code'
import type { Table } from '../layout/table'
import type { PaperSource } from '../paper-source'
import { spoolWords } from '../tables/line-spool-table'
import { walkTable } from '../tables/walk-table'
import { type Mapped, oneMap, stripMaps } from './line-maps'
import { bearingWords, type LineParts, signatures } from './line-parts'
import { layingWords } from './line-words'
import { codeOfLine } from './paper-code'
import { readingWords, stripDrawings } from './strip-block'

/** Room for no, one, two or three lines of names for which the map had none, mm. */
const NAMES_MM = [0, 5, 8.5, 12] as const
/** What `mapBlocks` puts below the drawing itself, mm. */
const BELOW_MM = 2
/** How map and walk may share a sheet beside each other: the more is done on the way, the less is left to the map. */
const MAP_SHARES = [
  [42, 58],
  [36, 64],
  [30, 70],
  [27, 73],
] as const

/** How spools and signatures share their row. */
const FOOT_SHARES = [62, 38] as const
/** More spools than this stand in a sentence. */
const MANY_SPOOLS = 8

/** Spools and boxes to sign; of many spools each has its place in a sentence. */
function footBlocks(spools: Table, system: UnitSystem): readonly Block[] {
  const signed: Block = { kind: 'table', table: signatures() }
  if (spools.rows.length === 0) return [signed]
  const used: Block =
    spools.rows.length > MANY_SPOOLS
      ? { kind: 'text', isSmall: true, text: spoolWords(spools, system) }
      : { kind: 'table', table: spools }
  return [
    beside([
      [FOOT_SHARES[0], [used]],
      [FOOT_SHARES[1], [signed]],
    ]),
  ]
}

/**
 * The card of one line: strip map, the line drawn straight with its scales, every stop in walking order, spools, boxes to sign. On one sheet where
 * that leaves the map room enough; else map and strip have a sheet to themselves, and what is read while walking stands together after it.
 */
export function lineCard(
  source: PaperSource,
  parts: LineParts,
  room: SheetRoom,
): { readonly blocks: readonly Block[]; readonly code?: SheetCode } {
  const { line, measured, norths, stops } = parts
  const text = (words: string): Block => ({ kind: 'text', text: words, isSmall: true })
  const strip = [...stripDrawings(source, parts, room.widthMm), text(readingWords(line))]
  const walkIn = (isNarrow: boolean): Block => ({
    kind: 'table',
    table: walkTable(source, line, measured, stops, { isNarrow }),
  })
  const walk = walkIn(false)
  const code = codeOfLine(source, line)
  const told = [
    layingWords(source, [line]),
    bearingWords(norths, source.date),
    gridNote(stops),
    ...parts.notes,
    code?.words ?? 'The line has too many bends for a code.',
  ]
  const summary = [...parts.facts, ...parts.verdicts, parts.hours]
  const words = [text(summary.filter(Boolean).join(' ')), text(told.filter(Boolean).join(' '))]
  const above = code ? [besideCode(words, room)] : words
  const walked = footBlocks(parts.spools, source.system)
  const card = {
    mapped: { source, line, norths, room },
    above,
    strip,
    walk,
    walked,
  }
  const ways = [
    mapAbove(card),
    ...MAP_SHARES.flatMap((shares) =>
      [true, false].map((isNarrow) => mapBeside(card, shares, walkIn(isNarrow))),
    ),
  ]
  // The larger map is the better one.
  for (const way of ways.toSorted((a, b) => scaleOf(card, a) - scaleOf(card, b))) {
    const blocks = onOneSheet(card, way)
    if (blocks) return { blocks, ...(code && { code }) }
  }
  const leftMm = room.heightMm - heightOfMm([...above, ...strip], room.widthMm) - BELOW_MM
  const maps =
    oneMap(card.mapped, room.widthMm, leftMm - NAMES_MM[1])?.draw() ??
    stripMaps(card.mapped, heightOfMm(above, room.widthMm))
  const blocks: readonly Block[] = [...above, ...maps, ...strip, { kind: 'new-sheet' }, walk, ...walked]
  return { blocks, ...(code && { code }) }
}

type Shares = (typeof MAP_SHARES)[number]

interface Card {
  readonly mapped: Mapped
  readonly above: readonly Block[]
  readonly strip: readonly Block[]
  readonly walk: Block
  readonly walked: readonly Block[]
}

/** A way to lay a card out on one sheet: the room that it leaves to the map, and where the map stands. */
interface Way {
  readonly mapMm: readonly [width: number, height: number]
  readonly withMap: (map: readonly Block[]) => readonly Block[]
}

/** The map over the whole width: for lines that run east and west. */
function mapAbove({ mapped: { room }, above, strip, walk, walked }: Card): Way {
  const takenMm = heightOfMm([...above, ...strip, walk, ...walked], room.widthMm)
  return {
    mapMm: [room.widthMm, room.heightMm - takenMm - BELOW_MM],
    withMap: (map) => [...above, ...map, ...strip, walk, ...walked],
  }
}

/** The map beside what is read while walking: for lines that run north and south. */
function mapBeside({ mapped: { room }, above, strip, walked }: Card, shares: Shares, walk: Block): Way {
  const takenMm = heightOfMm([...above, ...strip, ...walked], room.widthMm)
  return {
    mapMm: [columnsMm(shares, room.widthMm)[0]!, room.heightMm - takenMm - BELOW_MM],
    withMap: (map) => {
      const besideWalk = beside([
        [shares[0], map],
        [shares[1], [walk]],
      ])
      return [...above, ...strip, besideWalk, ...walked]
    },
  }
}

const scaleOf = ({ mapped }: Card, { mapMm }: Way): number =>
  oneMap(mapped, ...mapMm)?.scale ?? Number.POSITIVE_INFINITY

function onOneSheet({ mapped }: Card, { mapMm, withMap }: Way): readonly Block[] | undefined {
  const { room } = mapped
  // What stands beside the map may be too high for any map.
  const fits = (blocks: readonly Block[]) => heightOfMm(blocks, room.widthMm) <= room.heightMm
  if (!fits(withMap([]))) return undefined
  // Below a lower map the names have room that find none on the map.
  for (const namesMm of NAMES_MM) {
    const map = oneMap(mapped, mapMm[0], mapMm[1] - namesMm)
    if (!map) return undefined
    const blocks = withMap(map.draw())
    if (fits(blocks)) return blocks
  }
  return undefined
}
