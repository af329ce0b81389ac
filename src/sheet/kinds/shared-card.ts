import { LEAST_LEGEND_MM, legendHeightMm, signsOn } from '../drawing/legend-signs'
import { gridNote } from '../grid-note'
import { type Block, beside, blocksWithin, columnsMm, heightOfMm } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import { besideCode, type SheetCode } from '../layout/sheet-code'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'
import { spoolWords } from '../tables/line-spool-table'
import { withLine } from '../tables/of-lines'
import { sharedSquare, walkTable } from '../tables/walk-table'
import { oneMap } from './line-maps'
import { bearingWords, type LineParts, signatures } from './line-parts'
import { layingWords } from './line-words'
import { codeOfLine } from './paper-code'
import { readingWords, stripDrawings } from './strip-block'

/** A line whose strip is half as wide as a sheet: a millimetre of it is no more ground than on the whole width for one of four kilometres, and its names find room. */
const MOST_GROUND_M = 2000
const MOST_STOPS = 12
/** Each of the two maps has at least this scale, as the strips of a long line have. */
const LEAST_SCALE = 25_000
/** Room for no, one or two lines of names for which a map had none, mm. */
const NAMES_MM = [0, 5, 8.5] as const
/** What `mapBlocks` puts below the drawing itself, mm. */
const BELOW_MM = 2
const HALVES = [1, 1] as const

/** Whether a line has so little to tell that it may share a sheet. */
export const isShort = ({ line, measured, stops }: LineParts): boolean =>
  line.return === 'pair' && measured.groundM <= MOST_GROUND_M && stops.length <= MOST_STOPS

type Two = readonly [LineParts, LineParts]

/** Cards of two short lines on one sheet, side by side; undefined where it does not hold both of them whole, or one code does not. */
export function sharedCard(
  source: PaperSource,
  two: Two,
  room: SheetRoom,
): { readonly blocks: readonly Block[]; readonly code: SheetCode } | undefined {
  const [first, second] = two
  const halfMm = columnsMm(HALVES, room.widthMm)[0]!
  const text = (words: string, isBold = false): Block => ({
    kind: 'text',
    text: words,
    isSmall: true,
    isBold,
  })
  const halves = (blocksOf: (parts: LineParts) => readonly Block[]): Block =>
    beside(two.map((parts) => [1, blocksOf(parts)]))
  const named = ({ line, measured }: LineParts) => `Line ${lineNumber(source, line.id)}: ${measured.name}`
  const shared = (of: 'notes' | 'verdicts') => first[of].filter((each) => second[of].includes(each))
  const own = (parts: LineParts, of: 'notes' | 'verdicts') =>
    parts[of].filter((each) => !shared(of).includes(each))
  const heads = halves((parts) => [
    text(named(parts), true),
    text(
      [
        ...parts.facts,
        ...own(parts, 'verdicts'),
        parts.hours,
        parts.spools.rows.length > 0 ? spoolWords(parts.spools, source.system) : '',
        ...own(parts, 'notes'),
      ]
        .filter(Boolean)
        .join(' '),
    ),
  ])
  const drawnStraight = halves((parts) => halfStrip(source, parts, halfMm))
  const square = sharedSquare(two.flatMap(({ stops }) => stops))
  const walk = withLine(
    two.map(({ line, measured, stops }) => [
      lineNumber(source, line.id),
      walkTable(source, line, measured, stops, { square }),
    ]),
  )
  const below: readonly Block[] = [
    drawnStraight,
    { kind: 'table', table: walk },
    halves(({ line }) => [{ kind: 'table', table: signatures(`Line ${lineNumber(source, line.id)}`) }]),
  ]
  const leastMm = heightOfMm([heads, ...below], room.widthMm)
  const norths = [...new Set(two.map((parts) => bearingWords(parts.norths, source.date)))]
  const toldWith = (codeWords: string): Block => {
    const told = [
      ...shared('verdicts'),
      layingWords(source, [first.line, second.line]),
      readingWords(first.line),
      ...norths.map((words, i) => (norths.length > 1 ? `${named(two[i]!)}: ${words}` : words)),
      `Maps: WGS 84, true north up, ${[...new Set(two.map(gridOf))].join('; ')}.`,
      gridNote(two.flatMap(({ stops }) => stops)),
      ...shared('notes'),
      codeWords,
    ]
    return besideCode([text(told.filter(Boolean).join(' '))], room)
  }
  // Before what takes longer: whether there would be room for the maps.
  const mostMm = room.heightMm - leastMm - heightOfMm([toldWith('')], room.widthMm) - LEAST_LEGEND_MM
  if (!two.every((parts) => mapOf(source, parts, room, halfMm, mostMm))) return undefined
  const code = codeOfLine(source, first.line, [second.line])
  if (!code) return undefined
  const above = [toldWith(code.words), heads]
  const leftMm = room.heightMm - heightOfMm([...above, ...below], room.widthMm) - BELOW_MM
  for (const namesMm of NAMES_MM) {
    const maps = mapsOf(source, two, room, halfMm, leftMm - namesMm)
    if (!maps) return undefined
    const blocks = [...above, ...maps, ...below]
    if (heightOfMm(blocks, room.widthMm) <= room.heightMm) return { blocks, code }
  }
  return undefined
}

const gridOf = ({ norths: { zone } }: LineParts): string =>
  zone === undefined ? 'grid in degrees' : `grid UTM zone ${zone}, metres`

const strips = new WeakMap<LineParts, readonly Block[]>()

/** The strip of a line in half the width, drawn once though it is tried with several others. */
function halfStrip(source: PaperSource, parts: LineParts, halfMm: number): readonly Block[] {
  const drawn = strips.get(parts) ?? stripDrawings(source, parts, halfMm)
  strips.set(parts, drawn)
  return drawn
}

/** The map of one of them; undefined where it would be too small. */
function mapOf(
  source: PaperSource,
  { line, norths }: LineParts,
  room: SheetRoom,
  halfMm: number,
  heightMm: number,
) {
  const map = oneMap({ source, line, norths, room }, halfMm, heightMm, false)
  return map && map.scale <= LEAST_SCALE ? map : undefined
}

/** The two maps beside each other, and the one legend of both below them, together no higher than so much. */
function mapsOf(source: PaperSource, two: Two, room: SheetRoom, halfMm: number, heightMm: number) {
  const drawn = (mapMm: number) => {
    const maps = two.map((parts) => mapOf(source, parts, room, halfMm, mapMm))
    return maps.every((map) => map) ? maps.map((map) => map!.draw()) : undefined
  }
  const signsIn = (blocks: readonly Block[]) =>
    signsOn(
      blocksWithin(blocks).flatMap((block) =>
        block.kind === 'drawing' && block.drawing?.kind === 'map' ? [block.drawing.drawing] : [],
      ),
    )
  const roomy = drawn(heightMm - LEAST_LEGEND_MM - BELOW_MM)
  if (!roomy) return undefined
  const legendMm = legendHeightMm(signsIn(roomy.flat()), room.widthMm)
  const maps = legendMm > LEAST_LEGEND_MM ? drawn(heightMm - legendMm - BELOW_MM) : roomy
  if (!maps) return undefined
  const legend: Block = {
    kind: 'drawing',
    heightMm: legendMm,
    drawing: {
      ...{ kind: 'legend', norths: two[0].norths, widthMm: room.widthMm },
      signs: signsIn(maps.flat()),
    },
  }
  return [beside(maps.map((blocks) => [1, blocks])), legend]
}
