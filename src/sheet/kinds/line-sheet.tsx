import { type Line, type Position, verticesOf } from '../../plan/plan'
import { formatLengthM, formatOhms } from '../../report/quantity-text'
import type { ReportLine } from '../../report/report'
import { frameIn } from '../drawing/map-view'
import { matchAcross, windowOver, windowsAlong } from '../drawing/map-window'
import { type Plane, planeAbout } from '../drawing/plane'
import { type Block, heightOfMm } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import { lineNumber } from '../line-marks'
import { bearingBasis, type Norths, northsAt, northsText, type PaperSource } from '../paper-source'
import { legTable } from '../tables/leg-table'
import { testPointTable } from '../tables/test-tables'
import { mapBlocks } from './map-block'
import { profileBlocks } from './profile-block'

/** A line that fits one map at this scale or a larger one has but one; a longer one goes on over several, at the scale below it. */
const LEAST_SCALE = 40_000
const STRIP_SCALE = 25_000
/** Height of a strip map: what the rest of the sheet leaves, within these bounds. */
const STRIP_MM = { least: 55, most: 125, usual: 100 }
/** What `mapBlocks` puts below the drawing itself, mm. */
const BELOW_MM = 4

/** Room that a strip's heading takes, and what is kept for a line of names below it, mm. */
const STRIP_WORDS_MM = 22

/** Strips over a long line: two low ones on a sheet, or one tall one, whichever takes fewer sheets. */
function longStrips(plane: Plane, way: readonly Position[], room: SheetRoom) {
  const heights = [room.heightMm / 2 - STRIP_WORDS_MM, room.heightMm - STRIP_WORDS_MM] as const
  const [low, tall] = heights.map((heightMm) => {
    const size = [room.widthMm, heightMm] as const
    return { size, ...windowsAlong(plane, way, frameIn(...size), STRIP_SCALE) }
  })
  return tall!.windows.length < Math.ceil(low!.windows.length / 2) ? tall! : low!
}

function stripMaps(
  source: PaperSource,
  line: Line,
  norths: Norths,
  room: SheetRoom,
  stripMm: number,
): readonly Block[] {
  const way = verticesOf(source.plan, line)
  const plane = planeAbout(way)
  const size = [room.widthMm, stripMm] as const
  const whole = windowOver(plane, way, frameIn(...size))
  const id = `line-${lineNumber(source, line.id)}`
  if (whole.scale <= LEAST_SCALE) return mapBlocks(source, whole, size, norths, id, { subject: line.id })
  const strips = longStrips(plane, way, room)
  return strips.windows.flatMap((window, i) => {
    const before = strips.cuts[i - 1]
    const after = strips.cuts[i]
    const matches = [
      ...(before ? [matchAcross(window, before, `from strip ${i}`)] : []),
      ...(after ? [matchAcross(window, after, `to strip ${i + 2}`)] : []),
    ]
    return [
      { kind: 'heading', text: `Strip ${i + 1} of ${strips.windows.length}` } as const,
      ...mapBlocks(source, window, strips.size, norths, `${id}-${i}`, { subject: line.id, matches }),
    ]
  })
}

function summary({ plan, catalog, system }: PaperSource, line: Line, measured: ReportLine): string {
  const wire = catalog.wires.get(line.wire)?.name ?? line.wire
  const pairs =
    line.pairs > 1 ? `${line.pairs} pairs` : line.return === 'earth' ? 'one wire and the earth' : 'one pair'
  const circuits = [...plan.circuits.values()]
    .filter(({ lines }) => lines.includes(line.id))
    .map(({ name }) => name)
  return (
    `${wire}, ${pairs}; carries ${circuits.join(', ') || 'no circuit yet'}. ` +
    `Ground ${formatLengthM(measured.groundM, system)}; wire ${formatLengthM(measured.wireM, system)} a pair, ` +
    `with ${formatLengthM(plan.allowances.tailM, system)} left at each end. ` +
    `Loop over the whole line, far end shorted: ${formatOhms(measured.loopOhms)}.`
  )
}

const SIGNATURES = {
  isWrittenIn: true,
  title: 'Signed',
  columns: ['Step', 'Name, date and hour', 'Step ', 'Name, date and hour '].map((head, i) => ({
    head,
    share: i % 2 === 0 ? 22 : 71,
  })),
  rows: [
    ['Laid', '', 'Tested', ''],
    ['Tagged', '', 'Taken over', ''],
  ],
}

/** The route sheet of one line: strip map, legs, test points, boxes to sign. On one sheet where that can be. */
export function lineSheet(
  source: PaperSource,
  line: Line,
  measured: ReportLine,
  room: SheetRoom,
): readonly Block[] {
  const norths = northsAt(planeAbout(verticesOf(source.plan, line)).middle, source.date)
  const cautions = source.report.cautions.filter(({ where }) => where === line.id)
  const above: readonly Block[] = [
    { kind: 'text', text: `${summary(source, line, measured)} ${northsText(norths, source.date)}` },
  ]
  const below: readonly Block[] = [
    ...profileBlocks(source, line, measured, room.widthMm),
    { kind: 'table', table: legTable(source, line, measured, bearingBasis(norths)) },
    ...(cautions.length > 0
      ? [
          {
            kind: 'box',
            title: 'Cautions on this line',
            sentences: cautions.map(({ text }) => text),
          } as const,
        ]
      : []),
    { kind: 'table', table: testPointTable(source, line, measured) },
    { kind: 'table', table: SIGNATURES },
  ]
  const leftMm = room.heightMm - heightOfMm([...above, ...below], room.widthMm) - BELOW_MM
  const stripMm = leftMm < STRIP_MM.least ? STRIP_MM.usual : Math.min(STRIP_MM.most, leftMm)
  return [...above, ...stripMaps(source, line, norths, room, stripMm), ...below]
}
