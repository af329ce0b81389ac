import { parsePlan } from '../../src/files/parse-plan'
import { legGeometry } from '../../src/geo/leg-length'
import type { Plan } from '../../src/plan/plan'

/** A wire of round figures; `spread` is given where a test wants one. */
export const TEST_WIRE = {
  ...{ id: 'w', name: 'Wire', loopOhmPerKm: 130, tempCoeffPerC: 0.004, nanoFPerKm: 60, loopMilliHPerKm: 0.6 },
  ...{ dryMicroSPerKm: 0.001, wetMicroSPerKm: 20, wetNanoFPerKm: 75, kgPerKm: 13, source: 'invented' },
}

export interface TestLine {
  readonly id: string
  readonly from: string
  readonly to: string
  /** Electrical length: bend and slack see to it, wherever the stations stand. */
  readonly wireM: number
  readonly wire?: string
}

/** A plan whose lines are just so long. Stations stand on the equator, a hundred metres apart. */
export function fieldPlan(
  lines: readonly TestLine[],
  wanted: {
    readonly field?: readonly object[]
    readonly wires?: readonly object[]
    readonly sets?: Readonly<Record<string, string>>
    readonly catalogSets?: readonly object[]
    readonly supply?: object
    readonly plan?: object
    /** Members of lines besides, by id. */
    readonly lines?: Readonly<Record<string, object>>
  } = {},
): Plan {
  const stations = [...new Set(lines.flatMap(({ from, to }) => [from, to]))]
  // A degree of the equator is 111.31949 km of the ellipsoid.
  const lonOf = (station: string) => stations.indexOf(station) / 1113.1949
  const file = {
    type: 'FeatureCollection',
    plan: {
      format: 'fieldpair-plan',
      version: 1,
      title: 'Field',
      allowances: { tailM: 0 },
      catalog: { wires: wanted.wires ?? [TEST_WIRE], sets: wanted.catalogSets ?? [] },
      circuits: [
        {
          id: 'c1',
          name: 'Net',
          lines: lines.map(({ id }) => id),
          sets: wanted.sets ?? {},
          supply: wanted.supply ?? null,
        },
      ],
      ...(wanted.field && { field: wanted.field }),
      ...wanted.plan,
    },
    features: [
      ...stations.map((id) => ({
        type: 'Feature',
        id,
        geometry: { type: 'Point', coordinates: [lonOf(id), 0] },
        properties: { kind: 'station', name: id },
      })),
      ...lines.map(({ id, from, to, wireM, wire = 'w' }) => {
        const [start, end] = [lonOf(from), lonOf(to)]
        const halfM = (Math.abs(start - end) * 111_319.49) / 2
        // A bend to the north takes up nine tenths of the wire, slack the rest, to the metre and below.
        const northDeg = Math.sqrt(Math.max(0, (0.45 * wireM) ** 2 - halfM ** 2)) / 110_574
        const path: [number, number][] = [
          [start, 0],
          [(start + end) / 2, northDeg],
          [end, 0],
        ]
        const wayM = legGeometry(path[0]!, path[1]!).mapM + legGeometry(path[1]!, path[2]!).mapM
        const leg = { lay: 'surface', slackPct: (wireM / wayM - 1) * 100 }
        return {
          type: 'Feature',
          id,
          geometry: { type: 'LineString', coordinates: path },
          properties: { kind: 'line', from, to, wire, legs: [leg, leg], ...wanted.lines?.[id] },
        }
      }),
    ],
  }
  const read = parsePlan(JSON.stringify(file))
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return read.value
}
