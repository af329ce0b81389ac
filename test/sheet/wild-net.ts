import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { type Circuit, EMPTY_PLAN, type Lay, type Line, type Plan, type Station } from '../../src/plan/plan'

/** Words in several scripts, cut to names of 1 to 80 letters. */
const LETTERS = [
  'Sheepfold by the long wall under Windy Gap and over the moor to the old slate quarry road end',
  'Σταθμόςτηλεφώνουστηνκορυφήτουλόφουμεμακρύόνομαχωρίςκανένακενόανάμεσαστιςλέξειςτουγιαδοκιμή',
  'محطة الهاتف الميداني على التل الشمالي بجانب الطريق القديم قرب الجسر الحجري والنهر الصغير',
  '野外電話站在北方山丘上靠近舊石橋與小河旁邊的長名字用來測試紙張上的文字是否會被切斷或重疊',
  'WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW',
] as const
const LAYS: readonly Lay[] = ['surface', 'overhead', 'buried', 'water']
const WIRES = ['wd-1a', 'copper-24', 'copper-22'] as const
const SETS = ['crank-1600', 'common-1-ren', 'crank-1000'] as const
const SUPPLIES = ['feed-48', 'ringdown-24', 'two-9-volt-led'] as const

/** Numbers from 0 to below 1 that a seed gives: Park and Miller, Random number generators, CACM 31 (1988). */
function numbersFrom(seed: number): () => number {
  let state = seed * 7919 + 1
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}

/** A net that nobody would draw: names of any length and script, several pairs, earth returns, every kind of supply. */
export function wildNet(seed: number, count: number): Plan {
  const next = numbersFrom(seed)
  const pick = <T>(of: readonly T[]): T => of[Math.floor(next() * of.length)]!
  const name = () =>
    [...pick(LETTERS)]
      .slice(0, 1 + Math.floor(next() * 80))
      .join('')
      .trim() || 'A'
  const stations = Array.from(
    { length: count },
    (_, i): Station => ({
      id: `s${i}` as StationId,
      name: name(),
      note: next() < 0.4 ? `${name()}. ${name()}` : '',
      position: [9.9 + next() * 0.06, 47.1 + next() * 0.04],
    }),
  )
  const lines = stations.slice(1).map((station, i): Line => {
    const isEarth = next() < 0.15
    return {
      id: `l${i}` as LineId,
      from: stations[Math.floor(next() * (i + 1))]!.id,
      to: station.id,
      bends: [],
      legs: [{ lay: pick(LAYS) }],
      wire: pick(WIRES),
      pairs: isEarth ? 1 : 1 + Math.floor(next() * 3),
      return: isEarth ? 'earth' : 'pair',
      ...(isEarth && { electrodeOhms: [40, 60] as const }),
    }
  })
  const all: Circuit = circuit('c0', name(), lines, next)
  // A second one over every line that has a second pair and hangs on the first such line.
  const second: Line[] = []
  for (const line of lines.filter(({ pairs }) => pairs > 1)) {
    const reached = second.flatMap(({ from, to }) => [from, to])
    if (second.length === 0 || reached.includes(line.from)) second.push(line)
  }
  const circuits = second.length > 0 ? [all, circuit('c1', name(), second, next)] : [all]
  return {
    ...EMPTY_PLAN,
    title: name(),
    stations: new Map(stations.map((each) => [each.id, each])),
    lines: new Map(lines.map((each) => [each.id, each])),
    circuits: new Map(circuits.map((each) => [each.id, each])),
  }
}

function circuit(id: string, name: string, lines: readonly Line[], next: () => number): Circuit {
  const stations = [...new Set(lines.flatMap(({ from, to }) => [from, to]))]
  const kind = Math.floor(next() * 4)
  const set = kind === 0 ? SETS[0] : SETS[1]
  const supply = SUPPLIES[kind - 1]
  return {
    id: id as CircuitId,
    name,
    lines: lines.map((line) => line.id),
    sets: new Map(stations.filter(() => next() < 0.85).map((station) => [station, set])),
    supply: supply ? { type: supply, at: stations[0]! } : null,
  }
}
