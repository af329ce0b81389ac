import { parsePlan } from '../../src/files/parse-plan'
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
  /** Electrical length: all of it slack, so that where the stations stand does not matter. */
  readonly wireM: number
  readonly wire?: string
}

/** A plan whose lines are just so long. Stations stand on the equator, a kilometre apart. */
export function fieldPlan(
  lines: readonly TestLine[],
  wanted: {
    readonly field?: readonly object[]
    readonly wires?: readonly object[]
    readonly sets?: Readonly<Record<string, string>>
    readonly catalogSets?: readonly object[]
    readonly supply?: object
    readonly plan?: object
  } = {},
): Plan {
  const stations = [...new Set(lines.flatMap(({ from, to }) => [from, to]))]
  // A degree of the equator is 111.31949 km of the ellipsoid.
  const lonOf = (station: string) => stations.indexOf(station) / 111.31949
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
        const wayM = Math.abs(lonOf(from) - lonOf(to)) * 111_319.49
        const ends = [
          [lonOf(from), 0],
          [lonOf(to), 0],
        ]
        return {
          type: 'Feature',
          id,
          geometry: { type: 'LineString', coordinates: ends },
          properties: {
            ...{ kind: 'line', from, to, wire },
            legs: [{ lay: 'surface', slackPct: (wireM / wayM - 1) * 100 }],
          },
        }
      }),
    ],
  }
  const read = parsePlan(JSON.stringify(file))
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return read.value
}
