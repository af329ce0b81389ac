import { parsePlan } from '../../src/files/parse-plan'
import type { Plan } from '../../src/plan/plan'

/** Two stations, `a` and `b`, a line `l` with two pairs, circuits `one` and `two` on them, and `over` riding on both. */
export function ridingPlan(
  over: 'phantom' | 'simplex',
  electrodeOhms?: Readonly<Record<string, number>>,
): Plan {
  const station = (id: string, lon: number) => ({
    type: 'Feature',
    id,
    geometry: { type: 'Point', coordinates: [lon, 47] },
    properties: { kind: 'station' },
  })
  const properties = { kind: 'line', from: 'a', to: 'b', wire: 'wd-1a', pairs: 2, legs: [{ lay: 'surface' }] }
  const sets = { a: 'crank-1600', b: 'crank-1600' }
  const circuit = (id: string) => ({ id, lines: ['l'], sets })
  const coordinates = [
    [11, 47],
    [11.02, 47],
  ]
  const read = parsePlan(
    JSON.stringify({
      type: 'FeatureCollection',
      plan: {
        format: 'fieldpair-plan',
        version: 1,
        circuits: [
          circuit('one'),
          circuit('two'),
          { ...circuit('over'), over, ...(electrodeOhms && { electrodeOhms }) },
        ],
      },
      features: [
        station('a', 11),
        station('b', 11.02),
        { type: 'Feature', id: 'l', geometry: { type: 'LineString', coordinates }, properties },
      ],
    }),
  )
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return read.value
}
