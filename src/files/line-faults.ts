import { legGeometry } from '../geo/leg-length'
import type { Position } from '../geo/position'
import { POSITION } from '../plan/feature-schema'
import type { LineId, StationId } from '../plan/id'
import { LIMITS } from '../plan/limits'
import type { Line } from '../plan/plan'
import type { Problem } from '../problem'
import { faultsOf } from '../schema/faults'
import { limitFault, valueWords } from '../schema/limit'
import { isObject, type Members } from '../schema/schema'

/** How far a line's end may lie from its station and still be taken for it, m. */
const SNAP_M = 5

/** What other parts of a file are held against of a line; `pairs` is undefined where the file's figure is unsound. */
export type LineEnds = Pick<Line, 'id' | 'from' | 'to' | 'return'> & { readonly pairs: number | undefined }

/** Positions of the stations whose position is sound, whatever else may be wrong with them. */
export type StationPositions = ReadonlyMap<unknown, Position>

const membersOf = (value: unknown, name: string): Members => {
  const found = isObject(value) ? value[name] : undefined
  return isObject(found) ? found : {}
}

/** The position of a Point feature, where it is sound. */
export function soundPosition(value: unknown): Position | undefined {
  const { coordinates } = membersOf(value, 'geometry')
  return faultsOf(POSITION, coordinates, '').length === 0 ? (coordinates as Position) : undefined
}

/** The two ends of a line feature, where they are two stations that there are. */
export function soundEnds(value: unknown, stations: ReadonlySet<unknown>): LineEnds | undefined {
  const id = isObject(value) ? value.id : undefined
  const { from, to, pairs = 1, return: way } = membersOf(value, 'properties')
  if (typeof id !== 'string' || from === to || !stations.has(from) || !stations.has(to)) return undefined
  const sound = limitFault(LIMITS.pairs, pairs) === undefined
  return {
    id: id as LineId,
    from: from as StationId,
    to: to as StationId,
    return: way === 'earth' ? 'earth' : 'pair',
    pairs: sound ? (pairs as number) : undefined,
  }
}

/** Tells what the members of a line say against each other, so far as each is sound. */
export function lineFaults(value: unknown, at: string, stations: StationPositions, faults: Problem[]): void {
  const { from, to, legs, return: way, electrodeOhms } = membersOf(value, 'properties')
  const { coordinates } = membersOf(value, 'geometry')
  if (typeof from === 'string' && from === to) {
    const message = `The line starts and ends at station ${valueWords(from)}: lead it to another station.`
    faults.push({ code: 'line-to-itself', at: `${at}.properties.to`, message })
  }
  if (way === 'earth' && electrodeOhms === undefined) {
    const message =
      'The line returns through the earth: give the resistances of its two electrodes, [atFrom, atTo].'
    faults.push({ code: 'missing', at: `${at}.properties.electrodeOhms`, message })
  }
  if (!Array.isArray(coordinates) || coordinates.length < 2) return
  if (Array.isArray(legs) && legs.length !== coordinates.length - 1) {
    const found = `${coordinates.length} vertices and ${legs.length} ${legs.length === 1 ? 'leg' : 'legs'}`
    const message = `The line has ${found}: give ${coordinates.length - 1}, one for each stretch between two vertices.`
    faults.push({ code: 'legs-mismatch', at: `${at}.properties.legs`, message })
  }
  endFault(stations, from, coordinates, 0, at, faults)
  endFault(stations, to, coordinates, coordinates.length - 1, at, faults)
}

function endFault(
  stations: StationPositions,
  id: unknown,
  vertices: readonly unknown[],
  index: number,
  at: string,
  faults: Problem[],
): void {
  const station = stations.get(id)
  const vertex = vertices[index]
  if (!station || faultsOf(POSITION, vertex, '').length > 0) return
  const apartM = legGeometry(station, vertex as Position).mapM
  if (apartM <= SNAP_M) return
  const message = `The line ends ${apartM.toFixed(apartM < 10 ? 1 : 0)} m from its station ${valueWords(id)}: move one to the other, within ${SNAP_M} m.`
  faults.push({ code: 'end-off-station', at: `${at}.geometry.coordinates[${index}]`, message })
}
