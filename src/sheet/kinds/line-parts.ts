import { planeAbout } from '../../geo/plane'
import { type Line, verticesOf } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { cautionText } from '../../words/caution-words'
import { tongueOf } from '../../words/tongue'
import type { Table } from '../layout/table'
import { cautionsOfLine, type LineStop, lineStops } from '../line-stops'
import { circuitNotes, lineNotes } from '../notes'
import { bearingBasis, type Norths, northsAt, northsText, type PaperSource } from '../paper-source'
import { lineSpoolTable } from '../tables/line-spool-table'
import { lineFacts, lineHours, lineVerdicts } from './line-words'

/** What the card of a line is made of, whether it has a sheet of its own or shares one. */
export interface LineParts {
  readonly line: Line
  readonly measured: ReportLine
  readonly norths: Norths
  readonly stops: readonly LineStop[]
  readonly facts: readonly string[]
  readonly verdicts: readonly string[]
  readonly hours: string
  /** Cautions that have no place on the line, and what somebody wrote of it. */
  readonly notes: readonly string[]
  readonly spools: Table
}

export function linePartsOf(source: PaperSource, line: Line, measured: ReportLine): LineParts {
  const { plan, report, system } = source
  const say = tongueOf(plan, system)
  const norths = northsAt(planeAbout(verticesOf(plan, line)).middle, source.date)
  const notes = [
    ...cautionsOfLine(report.cautions, line).map((caution) => `Caution: ${cautionText(caution, say)}`),
    ...lineNotes(source, line),
    ...[...plan.circuits.values()]
      .filter(({ lines }) => lines.includes(line.id))
      .flatMap((circuit) => circuitNotes(source, circuit)),
  ]
  return {
    ...{ line, measured, norths },
    stops: lineStops(source, line, measured, bearingBasis(norths)),
    facts: lineFacts(source, line, measured),
    verdicts: lineVerdicts(source, line),
    hours: lineHours(source, line),
    notes: notes.map(sentence),
    spools: lineSpoolTable(source, line, measured),
  }
}

const sentence = (text: string) => (/[.!?]$/.test(text) ? text : `${text}.`)

/** Which north the bearings of a card count from, and the others. */
export const bearingWords = (norths: Norths, day: string): string =>
  `Bearings are ${bearingBasis(norths).word}. ${northsText(norths, day)}`

/** Name and hour of each step; `which` stands before the first where a sheet is for several lines. */
export const signatures = (which = ''): Table => ({
  isTight: true,
  isWrittenIn: true,
  title: '',
  columns: [which ? `${which} laid` : 'Laid', 'Tested', 'Taken over', 'Taken up'].map((head) => ({
    head,
    share: 1,
  })),
  rows: [['', '', '', '']],
})
