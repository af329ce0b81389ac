import { lineConstants } from '../budget/line-constants'
import type { Catalog } from '../catalog/catalog'
import type { Wire } from '../catalog/wire'
import { type LineField, NOTHING_RECORDED } from '../field/line-field'
import type { Crossing } from '../hazard/crossings'
import { splicePlacesOf } from '../materials/splice-limits'
import type { Piece } from '../materials/spool-plan'
import { branchStations, lineTags } from '../measure/line-tags'
import type { MeasuredLine } from '../measure/measured'
import { memoryOfEach, memoryOfRow } from '../memo'
import type { LineId } from '../plan/id'
import { inRow, lineRowOf } from '../plan/line-row'
import { type Line, type Plan, plainLineName } from '../plan/plan'
import type { ReportLine } from './report'

const remembered = memoryOfEach<MeasuredLine, ReportLine>()
const rememberedRow = memoryOfRow<Line, ReportLine>()

/** What is known of each line when its figures are put together. */
interface Known {
  readonly measured: ReadonlyMap<LineId, MeasuredLine>
  readonly pieces: ReadonlyMap<LineId, readonly Piece[]>
  readonly crossings: ReadonlyMap<LineId, readonly Crossing[]>
  /** Where splices count in the electricity of the plan. */
  readonly splices: ReadonlyMap<LineId, number> | undefined
  /** What was laid and read of those of which something was. */
  readonly fields: ReadonlyMap<LineId, LineField>
}

/** The lines of the report. A line that no edit touched is the very same as before. */
export function reportLines(plan: Plan, catalog: Catalog, known: Known): readonly ReportLine[] {
  const { lines, starts, ends } = lineRowOf(plan)
  const branches = branchStations(plan)
  const lengths = inRow(lines, known.measured)
  const cut = inRow(lines, known.pieces)
  const met = inRow(lines, known.crossings)
  const joints = lines.map(({ id }) => known.splices?.get(id) ?? 0)
  const done = lines.map(({ id }) => known.fields.get(id) ?? NOTHING_RECORDED)
  const { weather, wireTempC, work, allowances } = plan
  const from = [catalog, branches, weather, wireTempC, work, allowances.spliceOhms]
  return rememberedRow(lines, from, [starts, ends, lengths, cut, met, joints, done], (line, place) =>
    reportLine(plan, line, catalog, lengths[place]!, cut[place]!, met[place]!, joints[place]!, done[place]!),
  )
}

function reportLine(
  plan: Plan,
  line: Line,
  catalog: Catalog,
  measured: MeasuredLine,
  pieces: readonly Piece[],
  crossings: readonly Crossing[],
  splices: number,
  field: LineField,
): ReportLine {
  const wire = catalog.wires.get(line.wire)
  if (!wire) throw new Error(`line ${line.id} is of wire ${line.wire}, which nothing defines`)
  const branches = branchStations(plan)
  const { weather, wireTempC, work, stations } = plan
  const [start, end] = [stations.get(line.from)?.name, stations.get(line.to)?.name]
  const ends = [start, branches.has(line.from), end, branches.has(line.to)] as const
  const wires = line.return === 'earth' ? 1 : 2
  const spliceOhms = splices * wires * (plan.allowances.spliceOhms ?? 0)
  const from = [line, wire, pieces, crossings, weather, wireTempC, work, spliceOhms, field, ...ends]
  return remembered(measured, from, () => ({
    id: line.id,
    name: plainLineName(plan, line),
    mapM: measured.mapM,
    groundM: measured.groundM,
    laidM: measured.laidM,
    wireM: measured.wireM,
    loopOhms: loopOhms(plan, line, wire, measured) + spliceOhms,
    kg: wire.kgPerKm * (measured.wireM / 1000) * line.pairs,
    legs: measured.legs,
    pieces,
    crossings,
    tags: lineTags(plan, measured, line, crossings),
    splices: splicePlacesOf(plan, line, measured, pieces),
    field,
  }))
}

function loopOhms({ weather, wireTempC }: Plan, line: Line, wire: Wire, { wireM }: MeasuredLine): number {
  const [fromOhm, toOhm] = line.return === 'earth' ? (line.electrodeOhms ?? [0, 0]) : [0, 0]
  return (lineConstants(wire, weather, wireTempC, line.return).ohmPerKm * wireM) / 1000 + fromOhm + toOhm
}
