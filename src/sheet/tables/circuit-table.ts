import type { Plan } from '../../plan/plan'
import type { Report, ReportCircuit } from '../../report/report'
import type { Cell, Table } from '../layout/table'
import { lineNumbers } from './spool-tables'

/** What one circuit should measure, and room for what it does. */
export function circuitTable(plan: Plan, report: Report, circuit: ReportCircuit): Table {
  const nameOf = (id: string) => plan.stations.get(id as never)?.name || id
  const numbers = lineNumbers(plan)
  const lines = new Set<string>(plan.circuits.get(circuit.id)?.lines ?? [])
  const loops: Cell[][] = report.lines
    .filter((line) => lines.has(line.id))
    .map((line) => {
      const ends = plan.lines.get(line.id)
      return [
        `loop of line ${numbers.get(line.id)}, far end shorted`,
        ends ? nameOf(ends.from) : '',
        ends ? nameOf(ends.to) : '',
        line.loopOhms,
        'Ω',
        '',
        '',
      ]
    })
  const currents: Cell[][] = circuit.loop.map((row) => [
    `current, both sets up, at ${nameOf(row.station)}`,
    nameOf(row.call[0]),
    nameOf(row.call[1]),
    row.mA,
    'mA',
    `at least ${row.minMA.toFixed(0)}`,
    '',
  ])
  const rings: Cell[][] = circuit.ringing.map((row) => [
    'ringing, across the bell',
    nameOf(row.from),
    nameOf(row.to),
    row.volts,
    'V',
    `at least ${row.minVolts.toFixed(0)}`,
    '',
  ])
  const losses: Cell[][] = circuit.voice.map((row) => [
    'speech loss at 1 kHz',
    nameOf(row.from),
    nameOf(row.to),
    row.lossDb,
    'dB',
    `at most ${row.maxDb.toFixed(0)}`,
    '',
  ])
  return {
    title: `${circuit.name}: what it should measure`,
    columns: [
      { head: 'Check', share: 52 },
      { head: 'From', share: 24 },
      { head: 'To', share: 24 },
      { head: 'Expect', share: 14, show: 1 },
      { head: 'Unit', share: 10 },
      { head: 'Limit', share: 20 },
      { head: 'Reading', share: 22 },
    ],
    rows: [...loops, ...currents, ...rings, ...losses],
  }
}
