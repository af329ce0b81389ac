import type { Position } from '../../src/geo/position'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { type Circuit, EMPTY_PLAN, type Leg, type Line, type Plan, type Station } from '../../src/plan/plan'

export interface Size {
  readonly stations: number
  readonly perCircuit: number
  readonly bends: number
}

/** The two nets that the bench works on: party lines of crank sets, side by side. */
export const SIZES = {
  200: { stations: 200, perCircuit: 8, bends: 2 },
  1000: { stations: 1000, perCircuit: 10, bends: 20 },
} as const satisfies Readonly<Record<number, Size>>

const STEP_DEG = { lon: 0.012, lat: 0.01 }

/** Party lines of crank sets, so many to a circuit, so many bends to a line, side by side on a square. */
export function bigPlan({ stations: count, perCircuit, bends }: Size): Plan {
  const stations = new Map<StationId, Station>()
  const lines = new Map<LineId, Line>()
  const circuits = new Map<CircuitId, Circuit>()
  // Several party lines to a row, so that the net is about as wide as it is high.
  const perRow = Math.max(1, Math.round(Math.sqrt(count / perCircuit) / Math.sqrt(perCircuit)))
  for (let k = 0; k < count; k++) {
    const [net, place] = [Math.floor(k / perCircuit), k % perCircuit]
    const column = (net % perRow) * perCircuit + place
    const row = Math.floor(net / perRow)
    const id = `s${k}` as StationId
    const position: Position = [14 + column * STEP_DEG.lon, 46 + row * STEP_DEG.lat + 0.002 * Math.sin(k)]
    stations.set(id, { id, name: `Post ${k}`, note: '', position })
    if (place > 0) {
      const line = lineTo(`l${k}` as LineId, stations.get(`s${k - 1}` as StationId)!, id, position, bends)
      lines.set(line.id, line)
    }
  }
  for (let net = 0; net < count / perCircuit; net++) {
    const own = Array.from({ length: perCircuit }, (_, place) => net * perCircuit + place)
    const id = `c${net}` as CircuitId
    circuits.set(id, {
      id,
      name: `Net ${net}`,
      lines: own.slice(1).map((k) => `l${k}` as LineId),
      sets: new Map(own.map((k) => [`s${k}` as StationId, 'crank-1600'])),
      supply: null,
    })
  }
  return { ...EMPTY_PLAN, title: `${count} stations`, stations, lines, circuits }
}

/** A way that swings from side to side, with an overhead leg in the middle. */
function lineTo(id: LineId, from: Station, to: StationId, end: Position, count: number): Line {
  const [lon, lat] = from.position
  const bends = Array.from({ length: count }, (_, i): Position => {
    const part = (i + 1) / (count + 1)
    return [
      lon + (end[0] - lon) * part,
      lat + (end[1] - lat) * part + 0.0009 * Math.sin(7 * part + lat * 900),
    ]
  })
  const legs = Array.from({ length: count + 1 }, (_, i): Leg => {
    return { lay: i === Math.floor(count / 2) ? 'overhead' : 'surface' }
  })
  return { id, from: from.id, to, bends, legs, wire: 'wd-1a', pairs: 1, return: 'pair' }
}
