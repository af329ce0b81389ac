import type { Catalog } from '../catalog/catalog'
import type { Line, Plan } from '../plan/plan'
import {
  formatDistanceM,
  formatLengthM,
  formatMassKg,
  formatOhms,
  formatTempC,
  type UnitSystem,
} from '../report/quantity-text'
import type { Report, ReportLine } from '../report/report'
import { drawNet } from './drawing/net-drawing'
import { NetMap } from './drawing/net-map'
import type { Block } from './layout/block'
import { circuitTable } from './tables/circuit-table'
import { legTable } from './tables/leg-table'
import { carryTable, cutTable, lineNumbers } from './tables/spool-tables'
import { stationTable } from './tables/station-table'

/** What every paper is made from: nothing is reckoned anew, so that no paper can disagree with the screen. */
export interface PaperSource {
  readonly plan: Plan
  readonly report: Report
  readonly catalog: Catalog
  readonly system: UnitSystem
}

function summary({ plan, report, system }: PaperSource): string {
  const groundM = report.lines.reduce((sum, line) => sum + line.groundM, 0)
  const wireM = report.lines.reduce(
    (sum, line) => sum + line.wireM * (plan.lines.get(line.id)?.pairs ?? 1),
    0,
  )
  const kg = report.spools.reduce((sum, wire) => sum + wire.kg, 0)
  const splices = report.spools.reduce((sum, wire) => sum + wire.splices, 0)
  const circuits = report.circuits.map((circuit) => `${circuit.name} ${circuit.verdict}`).join(', ')
  return (
    `${plan.stations.size} stations and ${report.lines.length} lines over ${formatDistanceM(groundM, system)} of ground; ` +
    `${formatDistanceM(wireM, system)} of wire, ${splices} splices, ${formatMassKg(kg, system)} to carry with reserve. ` +
    `Reckoned ${plan.weather}, wire at ${formatTempC(plan.wireTempC, system)}. ` +
    (circuits ? `Circuits: ${circuits}.` : 'No circuit is planned.')
  )
}

function lineBlocks(source: PaperSource, line: Line, number: number, measured: ReportLine): readonly Block[] {
  const { plan, catalog, system } = source
  const wire = catalog.wires.get(line.wire)?.name ?? line.wire
  const pairs =
    line.pairs > 1 ? `${line.pairs} pairs` : line.return === 'earth' ? 'one wire and the earth' : 'one pair'
  const text =
    `${wire}, ${pairs}. Ground ${formatLengthM(measured.groundM, system)}; wire ${formatLengthM(measured.wireM, system)} a pair, ` +
    `with ${formatLengthM(plan.allowances.tailM, system)} left at each end. ` +
    `Loop over the whole line, far end shorted: ${formatOhms(measured.loopOhms)}. Splices: ${Math.max(0, measured.pieces.length - line.pairs)}.`
  return [
    { kind: 'heading', text: `Line ${number} · ${measured.name}` },
    { kind: 'text', text },
    { kind: 'table', table: legTable(plan, line, measured, system) },
  ]
}

/** The route sheet of the whole net: map, summary, stations, every line leg by leg, spools, what to measure, cautions. */
export function routeSheet(
  source: PaperSource,
  room: { widthMm: number; heightMm: number },
): readonly Block[] {
  const { plan, report, catalog, system } = source
  const mapHeightMm = Math.min(130, room.heightMm - 60)
  const drawing = drawNet(plan, report, { widthMm: room.widthMm, heightMm: mapHeightMm }, system)
  const numbers = lineNumbers(plan)
  const table = (of: ReturnType<typeof stationTable>): readonly Block[] =>
    of.rows.length > 0 ? [{ kind: 'table', table: of }] : []
  return [
    { kind: 'drawing', heightMm: mapHeightMm, drawing: <NetMap drawing={drawing} id="route" /> },
    ...(drawing.unplaced.length > 0
      ? [
          {
            kind: 'text',
            text: `Not named on the map for want of room: ${drawing.unplaced.join(', ')}.`,
          } as const,
        ]
      : []),
    { kind: 'text', text: summary(source) },
    ...table(stationTable(plan, catalog)),
    ...report.lines.flatMap((measured) => {
      const line = plan.lines.get(measured.id)
      return line ? lineBlocks(source, line, numbers.get(measured.id) ?? 0, measured) : []
    }),
    { kind: 'heading', text: 'Wire' },
    ...table(carryTable(report, catalog, system)),
    ...table(cutTable(plan, report, catalog, system)),
    { kind: 'heading', text: 'Measure' },
    ...report.circuits.flatMap((circuit) => table(circuitTable(plan, report, circuit))),
    {
      kind: 'box',
      title: 'Cautions',
      sentences: report.cautions.map((caution) => caution.text),
    },
  ]
}
