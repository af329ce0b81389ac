import { gridReference } from '../../geo/grid-reference'
import { type Plane, planeAbout } from '../../geo/plane'
import type { Position } from '../../geo/position'
import { type Line, verticesOf } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { cautionText } from '../../words/caution-words'
import { tongueOf } from '../../words/tongue'
import { frameIn } from '../drawing/map-frame'
import { LEAST_STRIP_MM, matchAcross, windowOver, windowsAlong } from '../drawing/map-window'
import { type Block, heightOfMm } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import { lineNumber } from '../line-marks'
import { cautionsOfLine, type LineStop, lineStops } from '../line-stops'
import { circuitNotes, lineNotes } from '../notes'
import { bearingBasis, type Norths, northsAt, northsText, type PaperSource } from '../paper-source'
import { lineSpoolTable } from '../tables/line-spool-table'
import { walkTable } from '../tables/walk-table'
import { layingWords, lineSummary } from './line-words'
import { mapBlocks } from './map-block'
import { stripBlocks } from './strip-block'

/** A line that fits one map at this scale or a larger one has but one; a longer one goes on over several, at the scale below it. */
const LEAST_SCALE = 40_000
const STRIP_SCALE = 25_000
/** Height of the one map of a line: what the rest of the sheet leaves, within these bounds. */
const MAP_MM = { least: 46, most: 175 }
/** Ground kept free about the line on its one map, mm. */
const EDGE_MM = 7
/** Room for a line of names for which the map had none, mm. */
const NAMES_MM = 7
/** What `mapBlocks` puts below the drawing itself, mm. */
const BELOW_MM = 4

/** Room that a strip's heading takes, and what is kept for a line of names below it, mm. */
const STRIP_WORDS_MM = 22

/** What the legend and a frame's own margin take of a map's height, mm. */
const ABOUT_FRAME_MM = frameIn(0, 0).top - frameIn(0, 0).bottom

/** Strips over a long line: two low ones on a sheet, or one tall one, whichever takes fewer sheets. */
function longStrips(plane: Plane, way: readonly Position[], room: SheetRoom) {
  const leastMm = LEAST_STRIP_MM + ABOUT_FRAME_MM
  const strips = (heightMm: number) => {
    const size = [room.widthMm, heightMm] as const
    return { size, ...windowsAlong(plane, way, frameIn(...size), STRIP_SCALE) }
  }
  // Under a head of very long names even one strip may be left too little: it then runs over, and the line is seen.
  const tall = strips(Math.max(leastMm, room.heightMm - STRIP_WORDS_MM))
  const lowMm = room.heightMm / 2 - STRIP_WORDS_MM
  if (lowMm < leastMm) return tall
  const low = strips(lowMm)
  return tall.windows.length < Math.ceil(low.windows.length / 2) ? tall : low
}

interface Mapped {
  readonly source: PaperSource
  readonly line: Line
  readonly norths: Norths
  readonly room: SheetRoom
}

const planeOf = ({ source, line }: Mapped) => planeAbout(verticesOf(source.plan, line))
const idOf = ({ source, line }: Mapped) => `line-${lineNumber(source, line.id)}`

/** The whole line on one map of this height; undefined where it would be too small to walk by. */
function oneMap(mapped: Mapped, heightMm: number): readonly Block[] | undefined {
  const { source, line, norths, room } = mapped
  if (heightMm < MAP_MM.least) return undefined
  const size = [room.widthMm, Math.min(MAP_MM.most, heightMm)] as const
  const window = windowOver(planeOf(mapped), verticesOf(source.plan, line), frameIn(...size), EDGE_MM)
  if (window.scale > LEAST_SCALE) return undefined
  return mapBlocks(source, window, size, norths, idOf(mapped), { subject: line.id })
}

/** The line over as many maps as it takes. */
function stripMaps(mapped: Mapped): readonly Block[] {
  const { source, line, norths, room } = mapped
  const strips = longStrips(planeOf(mapped), verticesOf(source.plan, line), room)
  return strips.windows.flatMap((window, i, { length }) => {
    const before = strips.cuts[i - 1]
    const after = strips.cuts[i]
    const matches = [
      ...(before ? [matchAcross(window, before, `from strip ${i}`)] : []),
      ...(after ? [matchAcross(window, after, `to strip ${i + 2}`)] : []),
    ]
    return [
      ...(length > 1 ? [{ kind: 'heading', text: `Strip ${i + 1} of ${length}` } as const] : []),
      ...mapBlocks(source, window, strips.size, norths, `${idOf(mapped)}-${i}`, {
        subject: line.id,
        matches,
      }),
    ]
  })
}

const SIGNATURES = {
  isTight: true,
  isWrittenIn: true,
  title: '',
  columns: ['Laid', 'Tested', 'Taken over', 'Taken up'].map((step) => ({
    head: `${step}: name, hour`,
    share: 1,
  })),
  rows: [['', '', '', '']],
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
): readonly Block[] {
  const { plan, report, system } = source
  const say = tongueOf(plan, system)
  const norths = northsAt(planeAbout(verticesOf(plan, line)).middle, source.date)
  const stops = lineStops(source, line, measured, bearingBasis(norths))
  const text = (words: string): Block => ({ kind: 'text', text: words, isSmall: true })
  const above = [text(lineSummary(source, line, measured))]
  const strip = stripBlocks(source, line, measured, stops, room.widthMm)
  const notes = [
    ...cautionsOfLine(report.cautions, line).map((caution) => `Caution: ${cautionText(caution, say)}`),
    ...lineNotes(source, line),
    ...[...plan.circuits.values()]
      .filter(({ lines }) => lines.includes(line.id))
      .flatMap((circuit) => circuitNotes(source, circuit)),
  ]
  const spools = lineSpoolTable(source, line, measured)
  const walked: readonly Block[] = [
    { kind: 'table', table: walkTable(source, line, measured, stops) },
    text(
      `${layingWords(source, line)} Bearings are ${bearingBasis(norths).word}. ${northsText(norths, source.date)}${zoneWords(stops)}`,
    ),
    ...(notes.length > 0 ? [text(notes.map(sentence).join(' '))] : []),
    ...(spools.rows.length > 0 ? [{ kind: 'table', table: spools } as const] : []),
    { kind: 'table', table: SIGNATURES },
  ]
  const heightMm = (...blocks: readonly Block[]) => heightOfMm(blocks, room.widthMm)
  const mapped = { source, line, norths, room }
  const leftMm = room.heightMm - heightMm(...above, ...strip) - BELOW_MM
  const leftOnOneMm = leftMm - heightMm(...walked)
  // Below a lower map the names have room that find none on the map.
  for (const mapMm of [leftOnOneMm, leftOnOneMm - NAMES_MM]) {
    const map = oneMap(mapped, mapMm)
    const sheet = [...above, ...(map ?? []), ...strip, ...walked]
    if (map && heightMm(...sheet) <= room.heightMm) return sheet
  }
  const maps = oneMap(mapped, leftMm - NAMES_MM) ?? stripMaps(mapped)
  return [...above, ...maps, ...strip, { kind: 'new-sheet' }, ...walked]
}

const sentence = (text: string) => (/[.!?]$/.test(text) ? text : `${text}.`)

/** Said where a line lies in more squares or zones than one, or where no grid reaches: each place then bears its whole reference. */
function zoneWords(stops: readonly LineStop[]): string {
  const zones = new Set(stops.map(({ position }) => gridReference(position)?.split(' ')[0]))
  if (zones.has(undefined)) return ' Above 84° N and below 80° S there is no UTM grid: places are in degrees.'
  if (zones.size > 1)
    return ` The line lies in grid zones ${[...zones].join(' and ')}: each place bears its own zone, and distances across the edge are not to be taken from the figures.`
  return ''
}
