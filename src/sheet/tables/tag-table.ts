import { gridReference } from '../../geo/grid-reference'
import type { Line } from '../../plan/plan'
import { lineName } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { unitOf } from '../../words/units'
import type { Table } from '../layout/table'
import { lineNumber, tagMarks } from '../line-marks'
import type { PaperSource } from '../paper-source'
import { TICK_BOX } from './leg-table'
import { loopOhmsAt } from './loop-ohms-at'

/** Every tag of one line: where it hangs, why, and what the loop reads there. */
export function tagTable(source: PaperSource, line: Line, measured: ReportLine): Table {
  const unit = unitOf('lengthM', source.system)
  return {
    title: `Line ${lineNumber(source, line.id)} · ${lineName(source.plan, line)}`,
    columns: [
      { head: 'Tag', share: 12 },
      { head: 'What it marks', share: 58 },
      { head: `Run ${unit.sign}`, share: 15 },
      { head: `Wire run ${unit.sign}`, share: 22 },
      { head: 'Loop Ω from start', share: 24, show: 1 },
      { head: 'Grid reference (MGRS)', share: 40 },
      { head: 'Hung', share: 12 },
    ],
    rows: tagMarks(source, line, measured).map(({ name, what, groundM, wireM, position }) => [
      name,
      what,
      unit.fromSi(groundM),
      unit.fromSi(wireM),
      loopOhmsAt(line, measured, wireM) ?? null,
      gridReference(position) ?? '',
      TICK_BOX,
    ]),
  }
}
