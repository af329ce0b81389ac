import type { Catalog } from '../catalog/catalog'
import { legGeometry } from '../geo/leg-length'
import type { MeasuredLine } from '../measure/measured'
import { memoryOfRow, remembering } from '../memo'
import type { LineId } from '../plan/id'
import { inRow, type LineEnds, lineEndsOf, lineRowOf } from '../plan/line-row'
import { type Line, type Plan, type Station, verticesOf } from '../plan/plan'
import type { LoadAllowances } from './load-allowances'

/** How one line's wire is carried to it. */
export interface Carrying {
  /** Full loads of one crew that its wire with its reels makes, one at least. */
  readonly trips: number
  /** Walking besides the laying itself, there and back for every load, m. */
  readonly walkM: number
}

/** Where wire is carried from: the station that most lines end at, of several the first drawn. Undefined where there is no line. */
const depotOf = remembering((lines: LineEnds, stations: Plan['stations']): Station | undefined => {
  const ends = new Map<string, number>()
  for (const { from, to } of lines.values())
    for (const id of [from, to]) ends.set(id, (ends.get(id) ?? 0) + 1)
  let depot: Station | undefined
  let most = 0
  for (const station of stations.values()) {
    const count = ends.get(station.id) ?? 0
    if (count <= most) continue
    depot = station
    most = count
  }
  return depot
})

const remembered = memoryOfRow<Line, Carrying>()

/**
 * How each line's wire comes to it, on foot from the depot; in the order of the lines.
 *
 * A crew carries what its people may carry; a line's wire and reels make so many loads. With the first it walks out to the nearer
 * end, d, and lays on from there; for each load more it walks back to the depot and out again, from the middle of the line on the whole: 2 (d + L/2); at
 * last it walks home from the far end, d + L. The way to a line is taken as straight: common practice, as no map here knows paths.
 */
export function carryingOf(
  plan: Plan,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  catalog: Catalog,
  { perPersonKg, people, crews, reelPct }: LoadAllowances,
): readonly Carrying[] {
  const depot = depotOf(lineEndsOf(plan), plan.stations)
  const crewKg = (perPersonKg * people) / crews
  const reckon = (line: Line, { wireM, groundM }: MeasuredLine): Carrying => {
    const vertices = verticesOf(plan, line)
    const wireKg = ((catalog.wires.get(line.wire)?.kgPerKm ?? 0) * wireM * line.pairs) / 1000
    const trips = Math.max(1, Math.ceil((wireKg * (1 + reelPct / 100)) / crewKg))
    const outM = depot
      ? Math.min(
          legGeometry(depot.position, vertices[0]!).mapM,
          legGeometry(depot.position, vertices.at(-1)!).mapM,
        )
      : 0
    return { trips, walkM: outM + (trips - 1) * 2 * (outM + groundM / 2) + groundM + outM }
  }
  const { lines } = lineRowOf(plan)
  const lengths = inRow(lines, measured)
  const from = [depot?.position, catalog.wires, crewKg, reelPct]
  return remembered(lines, from, [lengths], (line, place) => reckon(line, lengths[place]!))
}
