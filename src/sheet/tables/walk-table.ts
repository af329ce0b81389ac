import { gridReference } from '../../geo/grid-reference'
import type { Line } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { unitOf } from '../../words/units'
import { type Table, TICK_BOX } from '../layout/table'
import type { LineStop } from '../line-stops'
import type { PaperSource } from '../paper-source'
import { loopOhmsAt } from './loop-ohms-at'

/** The zone and the square that all places share, or the zone alone: said once, so that each needs no more than its own part; empty where they differ. */
export function sharedSquare(places: readonly Pick<LineStop, 'position'>[]): string {
  const parts = places.map(({ position }) => gridReference(position)?.split(' ') ?? [])
  for (const count of [2, 1]) {
    const [only, ...others] = new Set(parts.map((own) => own.slice(0, count).join(' ')))
    if (only && others.length === 0) return only
  }
  return ''
}

/** Where a loop should read: of a hundred lengths of this wire 95 lie so. */
export function loopRange(source: PaperSource, line: Line, ohms: number | undefined): string {
  if (ohms === undefined) return ''
  const spreadPct = source.catalog.wires.get(line.wire)?.spread?.loopOhmPerKm
  if (!spreadPct || line.return === 'earth') return ohms.toFixed(1)
  const off = 1 + spreadPct / 100
  const [low, high] = [ohms / off, ohms * off].map((each) => each.toFixed(each < 100 ? 1 : 0))
  return `${low}–${high}`
}

/**
 * All stops of a line, in walking order: what is there, what is done, what a meter at the start should read. On a narrow one the place on the grid
 * stands below the name, so that what is done has more room.
 */
export function walkTable(
  source: PaperSource,
  line: Line,
  measured: ReportLine,
  stops: readonly LineStop[],
  {
    isNarrow = false,
    square = sharedSquare(stops),
  }: { readonly isNarrow?: boolean; readonly square?: string } = {},
): Table {
  const unit = unitOf('lengthM', source.system)
  const gridHead = square ? `${square} …` : 'Grid reference'
  const isTested = ({ kinds }: LineStop) => kinds.some((kind) => kind === 'tag' || kind === 'splice')
  return {
    isTight: true,
    isClose: true,
    isUntitled: true,
    title: 'On the way',
    columns: [
      { head: isNarrow ? `At, ${gridHead}` : 'At', share: isNarrow ? 24 : 20 },
      { head: 'Tag', share: 9 },
      ...(isNarrow ? [] : [{ head: gridHead, share: square ? 18 : 30 }]),
      { head: `Run ${unit.sign}`, share: 13 },
      { head: 'Do', share: 140 },
      { head: 'Loop Ω', share: 15 },
      { head: 'read', share: 12 },
      { head: '', share: 6 },
    ],
    rows: stops.map((stop) => {
      const place = placeWords(stop.position, square)
      return [
        isNarrow ? [stop.name, place].filter(Boolean).join(' ') : stop.name,
        stop.tag,
        ...(isNarrow ? [] : [place]),
        unit.fromSi(stop.groundM),
        stop.does.join(' '),
        stop.groundM > 0 && isTested(stop)
          ? loopRange(source, line, loopOhmsAt(line, measured, stop.wireM))
          : '',
        '',
        TICK_BOX,
      ]
    }),
  }
}

/** Where a place is on the grid, without the square that the column's head names. What is short does not part. */
export function placeWords(position: LineStop['position'], square: string): string {
  const reference = gridReference(position) ?? 'outside the grid'
  return square ? reference.slice(square.length + 1).replaceAll(' ', '\u00a0') : reference
}
