import { murrayOhm, varleyOhm } from '../../budget/fault-location'
import { lineConstants } from '../../budget/line-constants'
import { isolated } from '../../isolated'
import type { Line } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { nameIn } from '../../words/tongue'
import { unitOf } from '../../words/units'
import type { Cell, Table } from '../layout/table'
import { lineNumber, tagMarks } from '../line-marks'
import { linesIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'

/** Loop readings for which the distance is told, Ω. */
const READINGS_OHM = [5, 10, 20, 50, 100, 200, 500, 1000]

/** How far off a short lies, by what a meter reads, for each kind of wire in the plan. */
export function shortTable({ plan, catalog, system }: PaperSource): Table {
  const unit = unitOf('lengthKm', system)
  const wires = [...new Set([...plan.lines.values()].map((line) => line.wire))].flatMap(
    (id) => catalog.wires.get(id) ?? [],
  )
  return {
    title: `A short: ${unit.sign} of wire from the meter, by the loop that it reads`,
    columns: [
      { head: 'Wire', share: 60 },
      ...READINGS_OHM.map((ohm) => ({ head: `${ohm} Ω`, share: 15, show: 2 })),
    ],
    rows: wires.map((wire) => {
      const { ohmPerKm } = lineConstants(wire, plan.weather, plan.wireTempC)
      return [isolated(wire.name), ...READINGS_OHM.map((ohm) => unit.fromSi((ohm / ohmPerKm) * 1000))]
    }),
  }
}

/** A bridge in balance at one part in a hundred, and at one ohm: both readings are in proportion to the distance. */
function bridgeM(loopOhm: number, wireM: number): { readonly murrayM: number; readonly varleyM: number } {
  const ohmPerM = loopOhm / (2 * wireM)
  return {
    murrayM: murrayOhm(loopOhm, 1, 99) / ohmPerM,
    varleyM: varleyOhm(loopOhm, loopOhm - 1) / ohmPerM,
  }
}

function faultRow(source: PaperSource, line: Line, measured: ReportLine): readonly Cell[] {
  const { plan, catalog, system } = source
  const unit = unitOf('lengthM', system)
  const wire = catalog.wires.get(line.wire)
  const nanoF = wire && (wire.nanoFPerKm * measured.wireM) / 1000
  const stretches = Math.max(1, tagMarks(source, line, measured).length - 1)
  const stops = Math.ceil(Math.log2(stretches))
  const own = [
    lineNumber(source, line.id),
    nameIn(plan, line.id),
    unit.fromSi(measured.wireM),
    measured.loopOhms,
  ]
  if (line.return === 'earth' || !wire) return [...own, null, null, null, nanoF ?? null, stops]
  const { ohmPerKm } = lineConstants(wire, plan.weather, plan.wireTempC)
  const { murrayM, varleyM } = bridgeM(measured.loopOhms, measured.wireM)
  return [
    ...own,
    unit.fromSi(1000 / ohmPerKm),
    unit.fromSi(murrayM),
    unit.fromSi(varleyM),
    nanoF ?? null,
    stops,
  ]
}

/** Every line with the figures by which a reading becomes a distance along its wire. */
export function faultTable(source: PaperSource): Table {
  const { plan, system } = source
  const { sign } = unitOf('lengthM', system)
  return {
    title: `Each line: ${sign} of wire from the meter for each step of a reading`,
    columns: [
      { head: 'Line', share: 12 },
      { head: 'From – to', share: 42 },
      { head: `Wire ${sign}`, share: 17 },
      { head: 'Loop Ω', share: 18, show: 1 },
      { head: `Short: ${sign} per Ω`, share: 20, show: 1 },
      { head: `Murray: ${sign} per 0.01`, share: 22, show: 1 },
      { head: `Varley: ${sign} per Ω`, share: 20, show: 1 },
      { head: 'Open: nF whole', share: 22, show: 1 },
      { head: 'Halving: stops', share: 20 },
    ],
    rows: linesIn(source).flatMap((measured) => {
      const line = plan.lines.get(measured.id)
      return line ? [faultRow(source, line, measured)] : []
    }),
  }
}

/** Room for what is found, so that the next crew need not begin anew. */
export const faultLog = (rows: number): Table => ({
  isWrittenIn: true,
  title: 'Faults found',
  columns: [
    { head: 'Date and hour', share: 30 },
    { head: 'Line', share: 12 },
    { head: 'Sign and reading', share: 50 },
    { head: 'Place found', share: 40 },
    { head: 'Cleared', share: 24 },
    { head: 'Name', share: 26 },
  ],
  rows: Array.from({ length: rows }, () => ['', '', '', '', '', '']),
})
