import { nameIn } from '../../words/tongue'
import { unitOf } from '../../words/units'
import { type Table, TICK_BOX } from '../layout/table'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'

/** The cut list, wire by wire and spool by spool: the pieces in the order in which they leave it, and what stays on it. */
export function cutTables(source: PaperSource): readonly Table[] {
  const { plan, report, system } = source
  const unit = unitOf('lengthM', system)
  const pieces = report.lines.flatMap((line) => line.pieces.map((piece) => ({ ...piece, line })))
  return report.spools.map(({ wire, used }) => ({
    title: `Spools of ${nameIn(plan, wire)}: where it goes`,
    columns: [
      { head: 'Spool', share: 12 },
      { head: `On it ${unit.sign}`, share: 14 },
      { head: `Goes to line: ${unit.sign}`, share: 60 },
      { head: `Left ${unit.sign}`, share: 13 },
      { head: 'Out', share: 9 },
    ],
    rows: used.map((spool) => [
      spool.spool,
      unit.fromSi(spool.lengthM),
      pieces
        .filter((piece) => piece.spool === spool.spool)
        .map(({ line, pair, wireM }) => {
          const which = (plan.lines.get(line.id)?.pairs ?? 1) > 1 ? ` pair ${pair + 1}` : ''
          return `${lineNumber(source, line.id)}${which}: ${unit.fromSi(wireM).toFixed(0)}`
        })
        .join(', '),
      unit.fromSi(spool.leftM),
      TICK_BOX,
    ]),
  }))
}

/** What to take, one row a length of spool. */
export function carryTable({ plan, report, system }: PaperSource): Table {
  const unit = unitOf('lengthM', system)
  const mass = unitOf('massKg', system)
  return {
    title: 'Wire to carry, reserve included',
    columns: [
      { head: 'Wire', share: 50 },
      { head: `Needed ${unit.sign}`, share: 18 },
      { head: 'Spools to take', share: 36 },
      { head: 'Splices', share: 14 },
      { head: `Mass ${mass.sign}`, share: 16, show: 1 },
      { head: `Missing ${unit.sign}`, share: 18 },
    ],
    rows: report.spools.map((wire) => [
      nameIn(plan, wire.wire),
      unit.fromSi(wire.neededM),
      wire.carry
        .map(({ lengthM, count }) => `${count} × ${unit.fromSi(lengthM).toFixed(0)} ${unit.sign}`)
        .join(', '),
      wire.splices,
      mass.fromSi(wire.kg),
      unit.fromSi(wire.missingM),
    ]),
  }
}
