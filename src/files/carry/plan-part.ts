import type { Position } from '../../geo/position'
import { spanOf } from '../../geo/span'
import { crossingsOf } from '../../hazard/crossings'
import { connectedPieces } from '../../plan/circuit-topology'
import type { LineId, StationId } from '../../plan/id'
import { type Circuit, type Hazard, type Line, lineNumber, type Plan, verticesOf } from '../../plan/plan'

/** Lines that meet a line at one of its stations, in the order of the plan. */
export const neighboursOf = ({ lines }: Plan, { id, from, to }: Line): readonly LineId[] =>
  [...lines.values()].flatMap((other) =>
    other.id !== id && [other.from, other.to].some((end) => end === from || end === to) ? [other.id] : [],
  )

/** What of a plan is cut out of it. */
export interface PartWish {
  /** The line that it is about: it becomes the first one. */
  readonly line: Line
  readonly others: readonly LineId[]
  /** With what the line itself crosses. */
  readonly withCrossed: boolean
  readonly withNotes: boolean
}

/**
 * A line and some of its neighbours as a plan: their stations, what of their circuits lies on them, what the line crosses near by, the entries
 * of the catalog that they use. Places are rounded to 0.1 m.
 */
export function partOf(plan: Plan, { line, others, withCrossed, withNotes }: PartWish): Plan {
  const lines = [line, ...others.map((id) => plan.lines.get(id)!)]
  const ends = new Set(lines.flatMap(({ from, to }) => [from, to]))
  const stations = [...plan.stations.values()].filter(({ id }) => ends.has(id))
  const circuits = plan.circuits.size > 0 ? circuitsOn(plan, lines) : []
  return {
    title: `${plan.title}, line ${lineNumber(plan, line.id)}`,
    note: '',
    weather: plan.weather,
    wireTempC: plan.wireTempC,
    ...(plan.loadingDistrict && { loadingDistrict: plan.loadingDistrict }),
    allowances: plan.allowances,
    catalog: catalogOf(plan, lines, circuits),
    circuits: new Map(circuits.map((circuit) => [circuit.id, circuit])),
    stock: [],
    stations: new Map(
      stations.map(({ unknown: _, ...station }) => [
        station.id,
        { ...station, note: withNotes ? station.note : '', position: rounded(station.position) },
      ]),
    ),
    lines: new Map(
      lines.map(({ unknown: _, ...each }) => [
        each.id,
        {
          ...each,
          bends: each.bends.map(rounded),
          legs: each.legs.map(({ note, unknown: _unknown, ...leg }) => ({
            ...leg,
            ...(withNotes && note && { note }),
          })),
        },
      ]),
    ),
    hazards: new Map(withCrossed ? crossedBy(plan, line).map((hazard) => [hazard.id, hazard]) : []),
  }
}

const DECIMALS = 1e6
const round = (deg: number) => Math.round(deg * DECIMALS) / DECIMALS
const rounded = ([lonDeg, latDeg]: Position): Position => [round(lonDeg), round(latDeg)]

/** The piece of each circuit that hangs together on these lines: on the first of them, where it is on that. */
function circuitsOn(plan: Plan, lines: readonly Line[]): readonly Circuit[] {
  const byId = new Map(lines.map((line) => [line.id, line]))
  const isOnFirst = (ids: readonly LineId[]) => ids.includes(lines[0]!.id)
  return [...plan.circuits.values()].flatMap(({ unknown: _, ...circuit }): readonly Circuit[] => {
    const pieces = connectedPieces(
      circuit.lines.filter((id) => byId.has(id)),
      (id) => byId.get(id),
    )
    const piece = pieces.find(isOnFirst) ?? pieces[0]
    // What rides on other circuits is whole or it is not.
    if (!piece || (circuit.over && piece.length < circuit.lines.length)) return []
    const stations = new Set<StationId>(piece.flatMap((id) => [byId.get(id)!.from, byId.get(id)!.to]))
    return [
      {
        ...circuit,
        lines: circuit.lines.filter((id) => piece.includes(id)),
        sets: new Map([...circuit.sets].filter(([id]) => stations.has(id))),
        supply: circuit.supply && stations.has(circuit.supply.at) ? circuit.supply : null,
      },
    ]
  })
}

function catalogOf({ catalog }: Plan, lines: readonly Line[], circuits: readonly Circuit[]): Plan['catalog'] {
  const used = new Set<string>([
    ...lines.map(({ wire }) => wire),
    ...circuits.flatMap(({ sets, supply }) => [...sets.values(), ...(supply ? [supply.type] : [])]),
  ])
  const isUsed = ({ id }: { readonly id: string }) => used.has(id)
  return {
    ...catalog,
    wires: catalog.wires.filter(isUsed),
    sets: catalog.sets.filter(isUsed),
    supplies: catalog.supplies.filter(isUsed),
  }
}

/** So far beside a line what it crosses is carried, in degrees of latitude and longitude: some 500 m. */
const NEAR_DEG = 0.005

/** What a line crosses: an area whole, a course as far as it runs near the line. */
function crossedBy(plan: Plan, line: Line): readonly Hazard[] {
  const vertices = verticesOf(plan, line)
  const [west, east] = spanOf(vertices.map(([lonDeg]) => lonDeg))
  const [south, north] = spanOf(vertices.map(([, latDeg]) => latDeg))
  const isNear = ([lonDeg, latDeg]: Position) =>
    lonDeg > west - NEAR_DEG &&
    lonDeg < east + NEAR_DEG &&
    latDeg > south - NEAR_DEG &&
    latDeg < north + NEAR_DEG
  const crossed = new Set(crossingsOf(plan, line).map(({ hazard }) => hazard))
  return [...crossed].flatMap((id): readonly Hazard[] => {
    const whole = plan.hazards.get(id)
    if (!whole) return []
    const { unknown: _, ...hazard } = whole
    const { geometry } = hazard
    if (geometry.type !== 'LineString') return [hazard]
    const { coordinates } = geometry
    const near = coordinates.map(isNear)
    const [first, last] = [near.indexOf(true), near.lastIndexOf(true)]
    // Where none of its own points is near, the two about the crossing are not known here: all of it goes.
    const kept = first < 0 ? coordinates : coordinates.slice(Math.max(0, first - 1), last + 2)
    return [{ ...hazard, geometry: { ...geometry, coordinates: kept.map(rounded) } }]
  })
}
