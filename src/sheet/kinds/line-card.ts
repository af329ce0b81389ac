import { planeAbout } from '../../geo/plane'
import { type Line, verticesOf } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { cautionText } from '../../words/caution-words'
import { tongueOf } from '../../words/tongue'
import type { UnitSystem } from '../../words/units'
import { gridNote } from '../grid-note'
import { type Block, columnsMm, heightOfMm } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import { besideCode, type SheetCode } from '../layout/sheet-code'
import type { Table } from '../layout/table'
import { cautionsOfLine, lineStops } from '../line-stops'
import { circuitNotes, lineNotes } from '../notes'
import { bearingBasis, northsAt, northsText, type PaperSource } from '../paper-source'
import { lineSpoolTable, spoolWords } from '../tables/line-spool-table'
import { walkTable } from '../tables/walk-table'
import { type Mapped, oneMap, stripMaps } from './line-maps'
import { layingWords, lineSummary } from './line-words'
import { codeOfLine } from './paper-code'
import { stripBlocks } from './strip-block'

/** Room for no, one, two or three lines of names for which the map had none, mm. */
const NAMES_MM = [0, 5, 8.5, 12] as const
/** What `mapBlocks` puts below the drawing itself, mm. */
const BELOW_MM = 2
/** How map and walk may share a sheet beside each other: the more is done on the way, the less is left to the map. */
const MAP_SHARES = [
  [42, 58],
  [36, 64],
  [30, 70],
] as const

/** Name and hour of each step. */
const SIGNATURES: Table = {
  isTight: true,
  isWrittenIn: true,
  title: '',
  columns: ['Laid', 'Tested', 'Taken over', 'Taken up'].map((head) => ({ head, share: 1 })),
  rows: [['', '', '', '']],
}
/** How spools and signatures share their row. */
const FOOT_SHARES = [62, 38] as const
/** More spools than this stand in a sentence. */
const MANY_SPOOLS = 8

const beside = (columns: readonly (readonly [share: number, blocks: readonly Block[]])[]): Block => ({
  kind: 'beside',
  columns: columns.map(([share, blocks]) => ({ share, blocks })),
})

/** Spools and boxes to sign; of many spools each has its place in a sentence. */
function footBlocks(spools: Table, system: UnitSystem): readonly Block[] {
  const signed: Block = { kind: 'table', table: SIGNATURES }
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
  line: Line,
  measured: ReportLine,
  room: SheetRoom,
): { readonly blocks: readonly Block[]; readonly code?: SheetCode } {
  const { plan, report, system } = source
  const say = tongueOf(plan, system)
  const norths = northsAt(planeAbout(verticesOf(plan, line)).middle, source.date)
  const stops = lineStops(source, line, measured, bearingBasis(norths))
  const text = (words: string): Block => ({ kind: 'text', text: words, isSmall: true })
  const strip = stripBlocks(source, line, measured, stops, room.widthMm)
  const notes = [
    ...cautionsOfLine(report.cautions, line).map((caution) => `Caution: ${cautionText(caution, say)}`),
    ...lineNotes(source, line),
    ...[...plan.circuits.values()]
      .filter(({ lines }) => lines.includes(line.id))
      .flatMap((circuit) => circuitNotes(source, circuit)),
  ]
  const spools = lineSpoolTable(source, line, measured)
  const walkIn = (isNarrow: boolean): Block => ({
    kind: 'table',
    table: walkTable(source, line, measured, stops, { isNarrow }),
  })
  const walk = walkIn(false)
  const told = [
    layingWords(source, line),
    `Bearings are ${bearingBasis(norths).word}.`,
    northsText(norths, source.date),
    gridNote(stops),
    ...notes.map(sentence),
  ]
  const code = codeOfLine(source, line)
  const words = [
    text(lineSummary(source, line, measured)),
    text([...told, code?.words ?? 'The line has too many bends for a code.'].filter(Boolean).join(' ')),
  ]
  const above = code ? [besideCode(words, room)] : words
  const walked = footBlocks(spools, system)
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

const sentence = (text: string) => (/[.!?]$/.test(text) ? text : `${text}.`)
