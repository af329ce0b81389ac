import { gearOfLine } from '../../materials/line-gear'
import { type CrewLoad, packTrips, type TripRow } from '../../materials/pack-trips'
import { linesByCrew } from '../../materials/share-lines'
import { loadAllowancesOf } from '../../materials/work-allowances'
import { tongueOf } from '../../words/tongue'
import { unitOf } from '../../words/units'
import { loadWords } from '../../words/work-words'
import { type Table, TICK_BOX } from '../layout/table'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'

/** What each crew packs for each trip. */
export function packingOf(source: PaperSource): ReturnType<typeof packTrips> {
  const { plan, catalog, report } = source
  const used = report.spools.flatMap(({ wire, used: own }) => own.map((spool) => ({ wire, ...spool })))
  return packTrips(
    plan,
    catalog,
    {
      loads: report.loads,
      pieces: new Map(report.lines.map(({ id, pieces }) => [id, pieces])),
      used,
      gear: new Map(
        report.lines.flatMap(({ id, legs, tags }) => {
          const line = plan.lines.get(id)
          return line ? [[id, gearOfLine(line, legs, tags.length)] as const] : []
        }),
      ),
    },
    linesByCrew(report.hours),
    loadAllowancesOf(plan),
  )
}

/** All trips of one crew, everything with a box to tick. */
export function tripTable(
  source: PaperSource,
  { crew, lines: own }: CrewLoad,
  rows: readonly TripRow[],
): Table {
  const { plan, system } = source
  const say = tongueOf(plan, system)
  const mass = unitOf('massKg', system)
  // A spool that goes on to another crew says so.
  const forLines = ({ lines }: TripRow) =>
    lines
      .map((line) => `${lineNumber(source, line)}${own.includes(line) ? '' : ' (another crew)'}`)
      .join(', ')
  return {
    title: `Crew ${crew + 1} packs`,
    columns: [
      { head: 'Trip', share: 10 },
      { head: 'What', share: 74 },
      { head: 'Spools', share: 28 },
      { head: 'For line', share: 26 },
      { head: 'Count', share: 12 },
      { head: `Together ${mass.sign}`, share: 20, show: 1 },
      { head: 'Packed', share: 14 },
    ],
    rows: rows.map((row) => [
      String(row.trip + 1),
      `${row.isSpare ? 'Spare: ' : ''}${loadWords(row.thing, say)}`,
      row.spools.join(', '),
      forLines(row),
      row.count,
      mass.fromSi(row.eachKg * row.count),
      TICK_BOX,
    ]),
  }
}

/** Which lines each crew lays, what it carries, and how often it goes. */
export function crewTable(source: PaperSource, crews: readonly CrewLoad[]): Table {
  const mass = unitOf('massKg', source.system)
  return {
    title: 'The crews',
    columns: [
      { head: 'Crew', share: 12, show: 0 },
      { head: 'Lays line', share: 90 },
      { head: `Carries ${mass.sign}`, share: 20, show: 1 },
      { head: 'Loads of one person', share: 26 },
      { head: 'Trips', share: 14 },
    ],
    rows: crews.map(({ crew, lines, kg, personLoads, trips }) => [
      crew + 1,
      lines.map((line) => lineNumber(source, line)).join(', '),
      mass.fromSi(kg),
      personLoads,
      trips,
    ]),
  }
}
