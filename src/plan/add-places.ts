import { legGeometry, pointOnLeg } from '../geo/leg-length'
import { onGlobe, type Position, samePosition } from '../geo/position'
import type { HazardId, LineId, StationId } from './id'
import type { NamedPath, Places } from './places'
import { EMPTY_PLAN, type Hazard, type HazardKind, type Plan, type Station } from './plan'

/** An end of a way so near to a station is taken to be at it, m. PLAN-FORMAT, section 5. */
export const JOIN_M = 25
/** What imported ways are taken to be, until a person says otherwise. */
const WIRE = 'wd-1a'

/** What a person has said of a file of places. */
export interface PlaceMeaning {
  /** Ends of ways so near to a station are at it, m. */
  readonly joinM: number
  readonly wire: string
  readonly pointsOf: (layer: string) => 'stations' | 'nothing'
  readonly pathsOf: (layer: string) => 'wire' | HazardKind | 'nothing'
}

const ALL_WIRE: PlaceMeaning = {
  joinM: JOIN_M,
  wire: WIRE,
  pointsOf: () => 'stations',
  pathsOf: () => 'wire',
}

/**
 * A plan of points and ways: points become stations, ways become lines of wire with their ends joined to stations within 25 m, or
 * to new ones; one that ends where it began gets a station half way.
 */
export const planOfPlaces = (places: Places, title: string): Plan =>
  addPlaces({ ...EMPTY_PLAN, title }, places, ALL_WIRE)

/**
 * A plan with places added to it, each as it is said to mean; ends of ways join stations that are there already too. A point with the name of a
 * station, within the joining distance of it, is that station.
 */
export function addPlaces(plan: Plan, { points, paths }: Places, meaning: PlaceMeaning): Plan {
  const stations = new Map(plan.stations)
  const lines = new Map(plan.lines)
  const hazards = new Map(plan.hazards)
  const near = new StationsNearby(meaning.joinM)
  for (const station of stations.values()) near.add(station)
  const nextStation = numbered<StationId>('s', plan)
  const nextLine = numbered<LineId>('l', plan)
  const nextHazard = numbered<HazardId>('h', plan)

  const addStation = (name: string, note: string, position: Position): Station => {
    const station: Station = { id: nextStation(), name, note, position: onGlobe(position) }
    stations.set(station.id, station)
    near.add(station)
    return station
  }
  const stationAt = (position: Position, name: string): Station =>
    near.nearest(position) ?? addStation(name, '', position)
  const addLine = (from: Station, to: Station, bends: readonly Position[]) => {
    const id = nextLine()
    lines.set(id, {
      ...{ id, from: from.id, to: to.id, wire: meaning.wire, pairs: 1, return: 'pair' },
      bends: bends.map(onGlobe),
      legs: [...bends, null].map(() => ({ lay: 'surface' })),
    })
  }
  const addWire = (path: NamedPath, name: string) => {
    const from = stationAt(path.positions[0]!, `${name}, start`)
    const to = stationAt(path.positions.at(-1)!, `${name}, end`)
    if (from !== to) return addLine(from, to, path.positions.slice(1, -1))
    const { before, middle, after } = halves(path)
    const half = addStation(`${name}, half way`, '', middle)
    addLine(from, half, before)
    addLine(half, to, after)
  }

  for (const { name, note, layer, position } of points) {
    if (meaning.pointsOf(layer) === 'nothing') continue
    const there = plan.stations.size > 0 ? near.nearest(position) : undefined
    if (there && there.name === name && plan.stations.has(there.id)) continue
    addStation(name || `Station ${stations.size + 1}`, note, position)
  }
  for (const [index, path] of paths.entries()) {
    const means = meaning.pathsOf(path.layer)
    if (means === 'nothing') continue
    if (means === 'wire') addWire(path, path.name || `Line ${index + 1}`)
    else {
      const id = nextHazard()
      hazards.set(id, { id, hazard: means, name: path.name, geometry: shapeOf(path) })
    }
  }
  return { ...plan, stations, lines, hazards }
}

/** Ids of a kind that the plan does not have yet: `s1`, `s2` … */
function numbered<Id extends string>(letter: string, plan: Plan): () => Id {
  const taken = new Set<string>([...plan.stations.keys(), ...plan.lines.keys(), ...plan.hazards.keys()])
  for (const feature of plan.unknown?.features ?? []) taken.add(String((feature as { id?: unknown }).id))
  let n = 0
  return () => {
    do n++
    while (taken.has(`${letter}${n}`))
    return `${letter}${n}` as Id
  }
}

/** A way that closes is the area within it, unless it has no inside. */
function shapeOf({ positions }: NamedPath): Hazard['geometry'] {
  const path = positions.map(onGlobe)
  const closes = path.length >= 4 && samePosition(path[0]!, path.at(-1)!)
  return closes
    ? { type: 'Polygon', coordinates: [[...path.slice(0, -1), path[0]!]] }
    : { type: 'LineString', coordinates: path }
}

/** The bends before and after the middle of a way, and the middle itself: the point half its length along it. */
function halves({ positions }: NamedPath): {
  readonly before: readonly Position[]
  readonly middle: Position
  readonly after: readonly Position[]
} {
  const lengthsM = positions.slice(1).map((each, i) => legGeometry(positions[i]!, each).mapM)
  let leftM = lengthsM.reduce((sum, m) => sum + m, 0) / 2
  let leg = 0
  while (leg < lengthsM.length - 1 && leftM > lengthsM[leg]!) leftM -= lengthsM[leg++]!
  const [a, b] = [positions[leg]!, positions[leg + 1]!]
  const share = lengthsM[leg]! > 0 ? leftM / lengthsM[leg]! : 0
  return {
    before: positions.slice(1, leg + 1),
    middle: pointOnLeg(a, b, share),
    after: positions.slice(leg + 1, -1),
  }
}

/** Stations by cells of about 0.001°, so that the near ones of many are found without asking all. */
class StationsNearby {
  private readonly cells = new Map<string, Station[]>()
  private readonly joinM: number
  constructor(joinM: number) {
    this.joinM = joinM
  }

  private static keyOf = (column: number, row: number) => `${column} ${row}`
  /** Columns widen toward the poles, so that a cell stays wider than what joins. */
  private static cellOf([lonDeg, latDeg]: Position): { column: number; row: number; wideDeg: number } {
    const row = Math.floor(latDeg * 1000)
    const wideDeg = 0.001 / Math.max(0.01, Math.cos((latDeg * Math.PI) / 180))
    return { row, column: Math.floor(lonDeg / wideDeg), wideDeg }
  }

  add(station: Station): void {
    const { column, row } = StationsNearby.cellOf(station.position)
    const key = StationsNearby.keyOf(column, row)
    const cell = this.cells.get(key)
    if (cell) cell.push(station)
    else this.cells.set(key, [station])
  }

  nearest(position: Position): Station | undefined {
    let best: Station | undefined
    let bestM = this.joinM
    for (const dRow of [-1, 0, 1]) {
      for (const dColumn of [-1, 0, 1]) {
        const { wideDeg } = StationsNearby.cellOf(position)
        const { column, row } = StationsNearby.cellOf([
          position[0] + dColumn * wideDeg,
          position[1] + dRow / 1000,
        ])
        for (const station of this.cells.get(StationsNearby.keyOf(column, row)) ?? []) {
          const apartM = legGeometry(position, station.position).mapM
          if (apartM > bestM || (apartM === bestM && best)) continue
          best = station
          bestM = apartM
        }
      }
    }
    return best
  }
}
