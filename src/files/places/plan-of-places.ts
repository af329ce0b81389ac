import { legGeometry, pointOnLeg } from '../../geo/leg-length'
import { onGlobe, type Position } from '../../geo/position'
import type { LineId, StationId } from '../../plan/id'
import { EMPTY_PLAN, type Line, type Plan, type Station } from '../../plan/plan'
import type { NamedPath, Places } from './places'

/** An end of a way so near to a station is taken to be at it, m. PLAN-FORMAT, section 5. */
export const JOIN_M = 25
/** What imported ways are taken to be, until a person says otherwise. */
const WIRE = 'wd-1a'

/**
 * A plan of points and ways: points become stations, ways become lines of wire with their ends joined to stations within 25 m, or
 * to new ones; one that ends where it began gets a station half way.
 */
export function planOfPlaces({ points, paths }: Places, title: string): Plan {
  const stations = new Map<StationId, Station>()
  const lines = new Map<LineId, Line>()
  const near = new StationsNearby()

  const addStation = (name: string, note: string, position: Position): Station => {
    const id = `s${stations.size + 1}` as StationId
    const station: Station = { id, name, note, position: onGlobe(position) }
    stations.set(id, station)
    near.add(station)
    return station
  }
  const stationAt = (position: Position, name: string): Station =>
    near.nearest(position) ?? addStation(name, '', position)
  const addLine = (from: Station, to: Station, bends: readonly Position[]) => {
    const id = `l${lines.size + 1}` as LineId
    lines.set(id, {
      ...{ id, from: from.id, to: to.id, wire: WIRE, pairs: 1, return: 'pair' },
      bends: bends.map(onGlobe),
      legs: [...bends, null].map(() => ({ lay: 'surface' })),
    })
  }

  for (const { name, note, position } of points)
    addStation(name || `Station ${stations.size + 1}`, note, position)
  for (const [index, path] of paths.entries()) {
    const name = path.name || `Line ${index + 1}`
    const from = stationAt(path.positions[0]!, `${name}, start`)
    const to = stationAt(path.positions.at(-1)!, `${name}, end`)
    const inner = path.positions.slice(1, -1)
    if (from !== to) addLine(from, to, inner)
    else {
      const { before, middle, after } = halves(path)
      const half = addStation(`${name}, half way`, '', middle)
      addLine(from, half, before)
      addLine(half, to, after)
    }
  }
  return { ...EMPTY_PLAN, title, stations, lines }
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
    let bestM = JOIN_M
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
