import type { Position } from '../../src/geo/position'
import type { CircuitId, HazardId, LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Line, type Plan } from '../../src/plan/plan'
import { bigPlan } from '../bench/big-plan'
import { demoPlan } from './demo-source'

const LAYS = ['surface', 'overhead', 'buried', 'surface'] as const

/** Stations in a row, a line between each two with so many legs, crank sets on one circuit, a note at each, a track across the first line. */
function chain(title: string, positions: readonly Position[], legs = 2, line: Partial<Line> = {}): Plan {
  const stations = positions.map((position, i) => ({
    id: `s${i}` as StationId,
    name: `Point ${i + 1}`,
    note: `Beside stone ${i + 1}.`,
    position,
  }))
  const lines = stations.slice(1).map((to, i): Line => {
    const from = stations[i]!
    const dLon = ((to.position[0] - from.position[0] + 540) % 360) - 180
    const at = (part: number): Position => {
      const lon = from.position[0] + dLon * part
      return [
        lon > 180 ? lon - 360 : lon,
        from.position[1] + (to.position[1] - from.position[1]) * part + 0.0004 * Math.sin(9 * part),
      ]
    }
    return {
      id: `l${i}` as LineId,
      from: from.id,
      to: to.id,
      bends: Array.from({ length: legs - 1 }, (_, k) => at((k + 1) / legs)),
      legs: Array.from({ length: legs }, (_, k) => ({ lay: LAYS[k % LAYS.length]! })),
      wire: 'wd-1a',
      pairs: 1,
      return: 'pair',
      ...line,
    }
  })
  const middle = lines[0]!.bends[0] ?? stations[0]!.position
  return {
    ...EMPTY_PLAN,
    title,
    stations: new Map(stations.map((each) => [each.id, each])),
    lines: new Map(lines.map((each) => [each.id, each])),
    hazards: new Map([
      [
        'h' as HazardId,
        {
          id: 'h' as HazardId,
          hazard: 'track',
          name: 'Peat track',
          note: '',
          geometry: {
            type: 'LineString',
            coordinates: [
              [middle[0] + 0.0005, middle[1] - 0.01],
              [middle[0] + 0.0005, middle[1] + 0.01],
            ],
          },
        },
      ],
    ]),
    circuits: new Map([
      [
        'c' as CircuitId,
        {
          id: 'c' as CircuitId,
          name: 'Long net',
          lines: lines.map(({ id }) => id),
          sets: new Map(stations.map(({ id }) => [id, 'crank-1600'])),
          supply: null,
        },
      ],
    ]),
  }
}

const row = (from: Position, step: Position, count: number): readonly Position[] =>
  Array.from({ length: count }, (_, i): Position => [from[0] + i * step[0], from[1] + i * step[1]])

/** The nets that every paper must bear. */
export const PAPER_PLANS: Readonly<Record<string, () => Plan>> = {
  demo: demoPlan,
  '25 stations': () => bigPlan({ stations: 25, perCircuit: 5, bends: 2 }),
  '60 stations': () => bigPlan({ stations: 60, perCircuit: 10, bends: 4 }),
  '151 legs': () => chain('151 legs', row([21.4, 61.2], [0.19, 0.03], 2), 151),
  'earth return': () =>
    chain('Earth return', row([-70.4, -33.2], [0.012, 0.008], 3), 2, {
      return: 'earth',
      electrodeOhms: [40, 60],
    }),
  polar: () => chain('Polar', row([24, 85.2], [0.11, 0.004], 4)),
  antimeridian: () =>
    chain('Antimeridian', [
      [179.985, -17.2],
      [-179.992, -17.195],
      [-179.97, -17.19],
    ]),
  'zone edge': () => chain('Zone edge', row([11.986, 47.3], [0.012, 0.003], 4)),
}
