import type { Catalog } from '../../catalog/catalog'
import type { LineId } from '../../plan/id'
import type { Plan } from '../../plan/plan'
import { lengthUnit, massUnit, type UnitSystem } from '../../report/quantity-text'
import type { Report } from '../../report/report'
import type { Table } from '../layout/table'

/** Number of each line, from 1, as all papers count them. */
export const lineNumbers = (plan: Plan): ReadonlyMap<LineId, number> =>
  new Map([...plan.lines.keys()].map((id, i) => [id, i + 1]))

/** The cut list: spool by spool, the pieces in the order in which they leave it, and what stays on it. */
export function cutTable(plan: Plan, report: Report, catalog: Catalog, system: UnitSystem): Table {
  const unit = lengthUnit(system)
  const numbers = lineNumbers(plan)
  const pieces = report.lines.flatMap((line) => line.pieces.map((piece) => ({ ...piece, line })))
  return {
    title: 'Spools: which wire goes where',
    columns: [
      { head: 'Spool', share: 12 },
      { head: 'Wire', share: 44 },
      { head: `On it ${unit.symbol}`, share: 14 },
      { head: `Goes to line: ${unit.symbol}`, share: 50 },
      { head: `Left ${unit.symbol}`, share: 13 },
      { head: 'Out', share: 9 },
    ],
    rows: report.spools.flatMap((wire) =>
      wire.used.map((spool) => [
        spool.spool,
        catalog.wires.get(wire.wire)?.name ?? wire.wire,
        unit.of(spool.lengthM),
        pieces
          .filter((piece) => piece.spool === spool.spool)
          .map(({ line, pair, wireM }) => {
            const which = (plan.lines.get(line.id)?.pairs ?? 1) > 1 ? ` pair ${pair + 1}` : ''
            return `${numbers.get(line.id)}${which}: ${unit.of(wireM).toFixed(0)}`
          })
          .join(', '),
        unit.of(spool.leftM),
        '☐',
      ]),
    ),
  }
}

/** What to take, one row a length of spool. */
export function carryTable(report: Report, catalog: Catalog, system: UnitSystem): Table {
  const unit = lengthUnit(system)
  const mass = massUnit(system)
  return {
    title: 'Wire to carry, reserve included',
    columns: [
      { head: 'Wire', share: 50 },
      { head: `Needed ${unit.symbol}`, share: 18 },
      { head: 'Spools to take', share: 36 },
      { head: 'Splices', share: 14 },
      { head: `Mass ${mass.symbol}`, share: 16, show: 1 },
      { head: `Missing ${unit.symbol}`, share: 18 },
    ],
    rows: report.spools.map((wire) => [
      catalog.wires.get(wire.wire)?.name ?? wire.wire,
      unit.of(wire.neededM),
      wire.carry
        .map(({ lengthM, count }) => `${count} × ${unit.of(lengthM).toFixed(0)} ${unit.symbol}`)
        .join(', '),
      wire.splices,
      mass.of(wire.kg),
      unit.of(wire.missingM),
    ]),
  }
}
