import { parsePlan } from '../../src/files/parse-plan'
import type { Plan } from '../../src/plan/plan'

interface Star {
  /** Kilometres from the board to each telephone. */
  readonly km: readonly number[]
  readonly wire?: string
  readonly set?: string
  readonly board?: string
  /** The operator has a telephone. */
  readonly operator?: true
}

/** A board at `hub` with a line to each of `t1`, `t2` …, due east of it and one below the other. */
export function starPlan({ km, wire = 'wd-1a', set = 'crank-1600', board, operator }: Star): Plan {
  const ends = km.map((far, i) => ({ id: `t${i + 1}`, far, at: [11 + far / 74, 48 - 0.01 * i] as const }))
  const hub = [11, 48] as const
  const station = (id: string, name: string, at: readonly number[]) => ({
    type: 'Feature',
    id,
    geometry: { type: 'Point', coordinates: at },
    properties: { kind: 'station', name },
  })
  const read = parsePlan(
    JSON.stringify({
      type: 'FeatureCollection',
      plan: {
        format: 'fieldpair-plan',
        version: 1,
        title: 'Star',
        circuits: [
          {
            id: 'star',
            name: 'Star',
            lines: ends.map(({ id }) => `l-${id}`),
            sets: Object.fromEntries(
              [...(operator ? ['hub'] : []), ...ends.map(({ id }) => id)].map((id) => [id, set]),
            ),
            supply: {
              type: board ?? `board-${km.length > 6 ? '12-monocord' : '6-monocord'}-drops`,
              at: 'hub',
            },
          },
        ],
      },
      features: [
        station('hub', 'Hub', hub),
        ...ends.map(({ id, at }, i) => station(id, `Post ${i + 1}`, at)),
        ...ends.map(({ id, at }) => ({
          type: 'Feature',
          id: `l-${id}`,
          geometry: { type: 'LineString', coordinates: [hub, at] },
          properties: { kind: 'line', from: 'hub', to: id, wire, legs: [{ lay: 'surface' }] },
        })),
      ],
    }),
  )
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return read.value
}

/** Boards in a row, each with two telephones and a line to the next. */
export function boardsInARow(count: number, kmApart = 3): Plan {
  const at = (k: number) => [11 + (k * kmApart) / 74, 48 + (k % 2) * 0.02] as const
  const place = (id: string, position: readonly number[]) => ({
    type: 'Feature',
    id,
    geometry: { type: 'Point', coordinates: position },
    properties: { kind: 'station', name: id.toUpperCase() },
  })
  const line = (from: string, to: string, ends: readonly (readonly number[])[]) => ({
    type: 'Feature',
    id: `${from}-${to}`,
    geometry: { type: 'LineString', coordinates: ends },
    properties: { kind: 'line', from, to, wire: 'wd-1a', legs: [{ lay: 'surface' }] },
  })
  const boards = Array.from({ length: count }, (_, k) => {
    const [lon, lat] = at(k)
    const hub = `board${k + 1}`
    const ends = ['north', 'south'].map((where, i) => ({
      id: `${where}${k + 1}`,
      position: [lon, lat + (i === 0 ? 0.01 : -0.01)],
    }))
    const trunk = k + 1 < count ? [line(hub, `board${k + 2}`, [at(k), at(k + 1)])] : []
    const local = ends.map(({ id, position }) => line(hub, id, [at(k), position]))
    return {
      stations: [place(hub, at(k)), ...ends.map(({ id, position }) => place(id, position))],
      lines: [...local, ...trunk],
      circuit: {
        id: `c${k + 1}`,
        name: `Net ${k + 1}`,
        lines: [...local, ...trunk].map(({ id }) => id),
        sets: Object.fromEntries(ends.map(({ id }) => [id, 'crank-1600'])),
        supply: { type: 'board-6-monocord-drops', at: hub },
      },
    }
  })
  const read = parsePlan(
    JSON.stringify({
      type: 'FeatureCollection',
      plan: { format: 'fieldpair-plan', version: 1, circuits: boards.map(({ circuit }) => circuit) },
      features: [...boards.flatMap(({ stations }) => stations), ...boards.flatMap(({ lines }) => lines)],
    }),
  )
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return read.value
}
