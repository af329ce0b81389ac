import type { ReportLine } from '../../report/report'
import { nameIn } from '../../words/tongue'
import { unitOf } from '../../words/units'
import type { Table } from '../layout/table'
import { lineNumber } from '../line-marks'
import { linesIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'

/** What went out on a line, and what of it is back, m of all pairs; nothing where nobody recorded it. */
function outAndBack({ wireM, field: { laidM, recoveredM } }: ReportLine, pairs: number) {
  const isRecorded = laidM + recoveredM > 0
  return {
    outM: pairs * (isRecorded ? laidM + recoveredM : wireM),
    backM: recoveredM > 0 ? pairs * recoveredM : '',
  } as const
}

/** Every line with what was put out on it, and room for what comes back. */
export function recoveryTable(source: PaperSource): Table {
  const { plan, report, system } = source
  const unit = unitOf('lengthM', system)
  const hours = new Map(report.hours.lines.map((each) => [each.line, each.recoveryH]))
  return {
    isWrittenIn: true,
    title: 'Lines taken up',
    columns: [
      { head: 'Line', share: 10 },
      { head: 'From – to', share: 40 },
      { head: `Wire out ${unit.sign}`, share: 16 },
      { head: 'Tags out', share: 12 },
      { head: 'Splices', share: 13 },
      { head: 'About h', share: 14, show: 1 },
      { head: `Wire back ${unit.sign}`, share: 20 },
      { head: 'Tags back', share: 16 },
      { head: 'Left lying, and where', share: 40 },
      { head: 'Name, hour', share: 28 },
    ],
    rows: linesIn(source).map((line) => {
      const { outM, backM } = outAndBack(line, plan.lines.get(line.id)?.pairs ?? 1)
      return [
        lineNumber(source, line.id),
        nameIn(plan, line.id),
        unit.fromSi(outM),
        line.tags.length,
        line.splices.reduce((sum, place) => sum + place.length, 0),
        hours.get(line.id) ?? null,
        backM === '' ? '' : unit.fromSi(backM),
        '',
        '',
        '',
      ]
    }),
  }
}

/** Every spool that went out for these lines, wire by wire, and room for what is on it when it is back. */
export function spoolsBackTables(source: PaperSource): readonly Table[] {
  const { plan, report, system } = source
  const unit = unitOf('lengthM', system)
  const lines = linesIn(source)
  const out = new Set(lines.flatMap(({ pieces }) => pieces.map(({ spool }) => spool)))
  return report.spools.map(({ wire, used }) => ({
    isWrittenIn: true,
    title: `Spools that come back: ${nameIn(plan, wire)}`,
    columns: [
      { head: 'Spool', share: 14 },
      { head: `Full ${unit.sign}`, share: 17 },
      { head: 'Lies in line', share: 30 },
      { head: `On it now ${unit.sign}`, share: 28 },
      { head: 'Good, doubtful, scrap', share: 56 },
      { head: 'Name', share: 34 },
    ],
    rows: used
      .filter(({ spool }) => out.has(spool))
      .map(({ spool, lengthM }) => [
        spool,
        unit.fromSi(lengthM),
        report.lines
          .filter(({ pieces }) => pieces.some((piece) => piece.spool === spool))
          .map(({ id }) => lineNumber(source, id))
          .join(', '),
        '',
        '',
        '',
      ]),
  }))
}
