import { lineConstants } from '../budget/line-constants'
import type { Catalog } from '../catalog/catalog'
import type { Wire } from '../catalog/wire'
import { type LineField, NOTHING_RECORDED } from '../field/line-field'
import type { Crossing } from '../hazard/crossings'
import { splicePlacesOf } from '../materials/splice-limits'
import type { Piece } from '../materials/spool-plan'
import { branchStations, lineTags } from '../measure/line-tags'
import type { MeasuredLine } from '../measure/measured'
import { memoryOfRow, remembering } from '../memo'
import type { LineId, StationId } from '../plan/id'
import { inRow, lineRowOf } from '../plan/line-row'
import { type Line, type Plan, plainLineName, type Station } from '../plan/plan'
import type { ReportLine } from './report'

const rememberedRow = memoryOfRow<Line, ReportLine>()

/** What a line's figures say of the stations at its ends, in rows that stay while those do. */
const endRows = remembering(
  (starts: readonly Station[], ends: readonly Station[], branches: ReadonlySet<StationId>) =>
    [starts, ends].flatMap((stations) => [
      stations.map(({ name }) => name),
      stations.map(({ id }) => branches.has(id)),
    ]),
)

/** What is known of each line when its figures are put together. */
interface Known {
  readonly measured: ReadonlyMap<LineId, MeasuredLine>
  readonly pieces: ReadonlyMap<LineId, readonly Piece[]>
  readonly crossings: readonly (readonly Crossing[])[]
  /** Where splices count in the electricity of the plan. */
  readonly splices: ReadonlyMap<LineId, number> | undefined
  /** What was laid and read of those of which something was. */
  readonly fields: ReadonlyMap<LineId, LineField>
}

/** The lines of the report. A line that no edit touched is the very same as before. */
export function reportLines(plan: Plan, catalog: Catalog, known: Known): readonly ReportLine[] {
  const { lines, starts, ends } = lineRowOf(plan)
  const lengths = inRow(lines, known.measured)
  const cut = inRow(lines, known.pieces)
  const met = known.crossings
  const joints = lines.map(({ id }) => known.splices?.get(id) ?? 0)
  const done = lines.map(({ id }) => known.fields.get(id) ?? NOTHING_RECORDED)
  const wires = lines.map((line) => catalog.wires.get(line.wire))
  const { weather, wireTempC, work, allowances } = plan
  const from = [weather, wireTempC, work, allowances.spliceOhms]
  return rememberedRow(
    lines,
    from,
    [...endRows(starts, ends, branchStations(plan)), wires, lengths, cut, met, joints, done],
    (line, place) => {
      const wire = wires[place]
      if (!wire) throw new Error(`line ${line.id} is of wire ${line.wire}, which nothing defines`)
      const [measured, pieces, crossings] = [lengths[place]!, cut[place]!, met[place]!]
      const spliceOhms = joints[place]! * (line.return === 'earth' ? 1 : 2) * (allowances.spliceOhms ?? 0)
      return {
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
        field: done[place]!,
      }
    },
  )
}

function loopOhms({ weather, wireTempC }: Plan, line: Line, wire: Wire, { wireM }: MeasuredLine): number {
  const [fromOhm, toOhm] = line.return === 'earth' ? (line.electrodeOhms ?? [0, 0]) : [0, 0]
  return (lineConstants(wire, weather, wireTempC, line.return).ohmPerKm * wireM) / 1000 + fromOhm + toOhm
}
