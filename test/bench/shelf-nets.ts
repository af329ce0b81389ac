import { shelfOf } from '../../src/files/parse-shelf'
import { shelfAnswer } from '../../src/shelf/shelf-answer'
import type { BenchRow } from './timing'

const GOAL_MS = 10_000

/** Nets between so many places on a hillside, from three wires, two kinds of telephones, a board, an exchange, a ringdown unit and cells. */
const netsOf = (count: number) => async (): Promise<BenchRow> => {
  const places = Array.from({ length: count }, (_, k) => ({
    id: `p${k}`,
    lon: 9.9 + 0.03 * ((k * 0.618) % 1),
    lat: 47.1 + 0.02 * ((k * 0.755) % 1),
  }))
  const shelf = shelfOf({
    places,
    have: {
      wires: [
        { wire: 'wd-1a', lengthM: 1609, count },
        { wire: 'copper-22', lengthM: 500, count: 4 },
        { wire: 'speaker-18', lengthM: 152, count: 3 },
      ],
      sets: [
        { set: 'desk-bell', count },
        { set: 'crank-1600', count: count - 1 },
      ],
      supplies: [
        { supply: 'ringdown-24', count: 1 },
        { supply: 'exchange-16', count: 1 },
        { supply: 'board-12-monocord-drops', count: 1 },
      ],
      cells: [{ cell: '6lr61', count: 6 }],
    },
  })
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  const start = performance.now()
  const { nets, search } = shelfAnswer(shelf.value)
  const ms = performance.now() - start
  return {
    what: `nets from a shelf between ${count} places`,
    ms,
    figures: `${nets.length} nets, ${search.judged} circuits judged, ${search.isBest ? 'none better than the first' : 'the first perhaps not the best'}`,
    goals: [
      { text: 'at most 10 s', met: ms <= GOAL_MS, kind: 'time' },
      { text: 'three nets or more', met: nets.length >= 3, kind: 'count' },
    ],
  }
}

export const shelfNets = [netsOf(4), netsOf(8), netsOf(12)]
