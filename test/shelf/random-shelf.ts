import { seeded } from '../../src/budget/seeded'

const WIRES = ['wd-1a', 'wd-36', 'copper-22', 'speaker-18', 'bell-wire-20']
const SETS = [
  'crank-1600',
  'crank-2500',
  'desk-bell',
  'common-carbon',
  'sound-powered',
  'sound-powered-plain',
]
const SUPPLIES = ['feed-48', 'feed-24', 'ringdown-24', 'two-9-volt', 'exchange-4', 'board-4-keys-drops']
const CELLS = ['6lr61', 'lr20', '4lr25']

/** What a shelf file says, as far as tests ask for it. */
export interface ShelfValue {
  readonly places: readonly { readonly id: string; readonly name: string; lon?: number; lat?: number }[]
  readonly distancesM?: readonly (readonly number[])[]
  readonly talk: 'all' | readonly (readonly [string, string])[]
  readonly agree?: 'all' | readonly (readonly [string, string])[]
  readonly have: {
    readonly wires: readonly { readonly wire: string; readonly lengthM: number; readonly count: number }[]
    readonly sets: readonly { readonly set: string; readonly count: number }[]
    readonly supplies: readonly { readonly supply: string; readonly count: number }[]
    readonly cells: readonly { readonly cell: string; readonly count: number }[]
  }
}

/** A shelf drawn at random: a telephone for each place as a rule, and so many things besides; positions, or distances alone. */
export function randomShelf(
  seed: number,
  { places, things, spreadM }: { readonly places: number; readonly things: number; readonly spreadM: number },
): ShelfValue {
  const random = seeded(seed)
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!
  const whole = (least: number, most: number) => least + Math.floor(random() * (most - least + 1))
  const kinds = [pick(SETS), pick(SETS)]
  const sets = new Map<string, number>()
  const add = (map: Map<string, number>, id: string) => map.set(id, (map.get(id) ?? 0) + 1)
  for (let k = 0; k < places; k++) add(sets, pick(kinds))
  const wires: ShelfValue['have']['wires'][number][] = []
  const supplies = new Map<string, number>()
  const cells = new Map<string, number>()
  const ofWire = [pick(WIRES), pick(WIRES)]
  const length = () => Math.round(spreadM * Math.max(1, places - 1) * (0.5 + 1.1 * random()))
  wires.push({ wire: ofWire[0]!, lengthM: length(), count: 1 })
  for (let left = things - places - 1; left > 0; left--) {
    const what = pick(['wire', 'wire', 'supply', 'cell', 'set'] as const)
    if (what === 'wire') wires.push({ wire: pick(ofWire), lengthM: length(), count: 1 })
    else if (what === 'supply') add(supplies, pick(SUPPLIES))
    else if (what === 'cell') add(cells, pick(CELLS))
    else add(sets, pick(kinds))
  }
  const at = Array.from({ length: places }, () => [random() * spreadM, random() * spreadM] as const)
  const isPlaced = random() < 0.5
  const names = at.map(([x, y], k) => ({
    id: `p${k}`,
    name: `Place ${k}`,
    ...(isPlaced && { lon: 9 + x / 76_000, lat: 47 + y / 111_200 }),
  }))
  const pairs = at.flatMap((_, a) => at.slice(a + 1).map((__, k) => [`p${a}`, `p${a + k + 1}`] as const))
  const some = pairs.filter(() => random() < 0.4)
  const counted = <K extends string>(map: ReadonlyMap<string, number>, of: K) =>
    [...map].map(([id, count]) => ({ [of]: id, count }) as Record<K, string> & { readonly count: number })
  const talk = random() < 0.5 || some.length === 0 ? ('all' as const) : some
  return {
    places: names,
    ...(!isPlaced && {
      // Ways go round things: no two places are nearer than they lie, and some are half as far again.
      distancesM: symmetric(at.length, (a, b) => {
        const straightM = Math.hypot(at[a]![0] - at[b]![0], at[a]![1] - at[b]![1])
        return Math.round(Math.max(30, straightM * (1 + whole(0, 5) / 10)))
      }),
    }),
    talk,
    // On every third shelf some of those who talk may agree on times.
    ...(seed % 3 === 1 && { agree: talk === 'all' ? ('all' as const) : talk.slice(1) }),
    have: {
      wires,
      sets: counted(sets, 'set'),
      supplies: counted(supplies, 'supply'),
      cells: counted(cells, 'cell'),
    },
  }
}

function symmetric(count: number, of: (a: number, b: number) => number): readonly (readonly number[])[] {
  const rows = Array.from({ length: count }, () => new Array<number>(count).fill(0))
  for (let a = 0; a < count; a++)
    for (let b = a + 1; b < count; b++) {
      const m = of(a, b)
      rows[a]![b] = m
      rows[b]![a] = m
    }
  return rows
}
