import { nameIn } from '../../words/tongue'
import { unitOf } from '../../words/units'
import type { Table } from '../layout/table'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'

/** Every line in one row. */
export function lineTable(source: PaperSource): Table {
  const { plan, report, system } = source
  const unit = unitOf('lengthM', system)
  const mass = unitOf('massKg', system)
  return {
    title: 'Lines',
    columns: [
      { head: 'Line', share: 11 },
      { head: 'From – to', share: 46 },
      { head: 'Wire', share: 42 },
      { head: 'Pairs', share: 18 },
      { head: `Ground ${unit.sign}`, share: 19 },
      { head: `Wire ${unit.sign}`, share: 16 },
      { head: 'Loop Ω', share: 16, show: 1 },
      { head: `Mass ${mass.sign}`, share: 15, show: 1 },
    ],
    rows: report.lines.map((line) => {
      const drawn = plan.lines.get(line.id)
      const wire = drawn?.wire ?? ''
      return [
        lineNumber(source, line.id),
        nameIn(plan, line.id),
        nameIn(plan, wire),
        drawn?.return === 'earth' ? '1 wire, earth' : String(drawn?.pairs ?? 1),
        unit.fromSi(line.groundM),
        unit.fromSi(line.wireM),
        line.loopOhms,
        mass.fromSi(line.kg),
      ]
    }),
  }
}
