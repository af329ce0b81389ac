import { lengthUnit, massUnit } from '../../words/quantity-text'
import type { Table } from '../layout/table'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'

/** Every line in one row. */
export function lineTable(source: PaperSource): Table {
  const { plan, report, catalog, system } = source
  const unit = lengthUnit(system)
  const mass = massUnit(system)
  return {
    title: 'Lines',
    columns: [
      { head: 'Line', share: 11 },
      { head: 'From – to', share: 46 },
      { head: 'Wire', share: 42 },
      { head: 'Pairs', share: 18 },
      { head: `Ground ${unit.symbol}`, share: 19 },
      { head: `Wire ${unit.symbol}`, share: 16 },
      { head: 'Loop Ω', share: 16, show: 1 },
      { head: `Mass ${mass.symbol}`, share: 15, show: 1 },
    ],
    rows: report.lines.map((line) => {
      const drawn = plan.lines.get(line.id)
      const wire = drawn?.wire ?? ''
      return [
        lineNumber(source, line.id),
        line.name,
        catalog.wires.get(wire)?.name ?? wire,
        drawn?.return === 'earth' ? '1 wire, earth' : String(drawn?.pairs ?? 1),
        unit.of(line.groundM),
        unit.of(line.wireM),
        line.loopOhms,
        mass.of(line.kg),
      ]
    }),
  }
}
