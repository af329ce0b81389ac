import type { Supply } from '../catalog/supply'
import type { TelephoneSet } from '../catalog/telephone-set'
import type { Wire } from '../catalog/wire'
import type { Position } from '../geo/position'
import { longestChainM, type SpoolKind, usableKinds } from '../materials/spool-kinds'
import { DEFAULT_ALLOWANCES } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import { batteriesOf } from './battery'
import { bendsFor, madeUpPlaces } from './made-up-places'
import type { Shelf } from './shelf'
import { splitWay, type Way, wayAlong, wayBack } from './ways'

/** All that there is of one wire. */
export interface WireKind {
  readonly wire: Wire
  readonly spools: readonly SpoolKind[]
  /** The longest run that all of it can be spliced into, m. */
  readonly reachM: number
}

/** A supply that could be taken, and what it takes off the shelf: itself, or so many cells. */
export interface SupplyKind {
  readonly supply: Supply
  readonly count: number
  /** Index of the cell, and how many of them; absent where it is taken as it stands. */
  readonly cells?: { readonly cell: number; readonly each: number }
}

/** One line, of one wire from end to end. */
export interface Part {
  readonly kind: number
  readonly way: Way
}

/** One run of wire from one place to another: one line, or several of different wires, joined on the way. */
export type Run = readonly Part[]

/** A shelf with its places, made ready to be searched: things by index, and every way with its lengths. */
export interface Country {
  readonly shelf: Shelf
  readonly positions: readonly Position[]
  /** Whether the positions are made up, and only the lengths of ways count. */
  readonly isMadeUp: boolean
  readonly wires: readonly WireKind[]
  readonly sets: readonly { readonly set: TelephoneSet; readonly count: number }[]
  readonly supplies: readonly SupplyKind[]
  readonly cells: readonly number[]
  /** From the lower index to the higher. */
  readonly way: (a: number, b: number) => Way
  /** Every run of wire that can be made between two places with what there is, those without a joint first. */
  readonly runs: (a: number, b: number) => readonly Run[]
}

/** Ways that are known already, over the ground; `undefined` where a straight line is to be taken. */
export type KnownWays = (a: number, b: number) => Pick<Way, 'bends' | 'lays'> | undefined

/** @param ground elevations, where they are known */
export function countryOf(shelf: Shelf, knownWays?: KnownWays, ground?: Ground): Country {
  const { places, distancesM, have, catalog } = shelf
  const isMadeUp = distancesM !== null && places.some(({ position }) => position === null)
  const positions = isMadeUp ? madeUpPlaces(distancesM) : places.map(({ position }) => position!)
  const ways = new Map<string, Way>()
  const way = (a: number, b: number): Way => {
    const key = `${a} ${b}`
    const known = ways.get(key)
    if (known) return known
    const [from, to] = [positions[a]!, positions[b]!]
    const course = knownWays?.(a, b)
    const bends = course?.bends ?? (distancesM ? bendsFor(from, to, distancesM[a]![b]!) : [])
    const lays = course?.lays ?? [...bends, to].map(() => 'surface' as const)
    const found = wayAlong({ from, to, bends, lays }, ground)
    ways.set(key, found)
    return found
  }
  const wires = wireKinds(shelf)
  const runs = new Map<string, readonly Run[]>()
  return {
    shelf,
    positions,
    isMadeUp,
    wires,
    sets: merged(have.sets).map(({ id, count }) => ({ set: catalog.sets.get(id)!, count })),
    supplies: [
      ...merged(have.supplies).map(({ id, count }) => ({ supply: catalog.supplies.get(id)!, count })),
      ...merged(have.cells).flatMap(({ id, count }, cell) =>
        batteriesOf(id, count, (other) => catalog.supplies.has(other)).map(
          ({ supply, cells }): SupplyKind => ({
            supply,
            count: Math.floor(count / cells),
            cells: { cell, each: cells },
          }),
        ),
      ),
    ],
    cells: merged(have.cells).map(({ count }) => count),
    way,
    runs: (a, b) => {
      const key = `${a} ${b}`
      const found = runs.get(key) ?? runsAlong(way(a, b), wires, ground)
      runs.set(key, found)
      return found
    },
  }
}

/** Things of one id, counted together; none that there is none of. */
function merged(list: Shelf['have']['sets']): Shelf['have']['sets'] {
  const counts = new Map<string, number>()
  for (const { id, count } of list) if (count > 0) counts.set(id, (counts.get(id) ?? 0) + count)
  return [...counts].map(([id, count]) => ({ id, count }))
}

const { spliceWasteM } = DEFAULT_ALLOWANCES

function wireKinds({ have, catalog }: Shelf): readonly WireKind[] {
  const byWire = new Map<string, SpoolKind[]>()
  for (const { wire, lengthM, count } of have.wires)
    if (count > 0) byWire.set(wire, [...(byWire.get(wire) ?? []), { lengthM, count }])
  return [...byWire]
    .map(([id, spools]) => ({
      wire: catalog.wires.get(id)!,
      spools: usableKinds(spools, 0),
      reachM: longestChainM(spools, spliceWasteM),
    }))
    .filter(({ reachM }) => reachM > 0)
}

/** Lengths of one wire that are worth using up whole before another goes on: one spool of each length, and all that there is. */
const wholeLengthsM = ({ spools, reachM }: WireKind): readonly number[] =>
  [...new Set([...spools.map(({ lengthM }) => lengthM), reachM])].toSorted((a, b) => b - a)

function runsAlong(way: Way, wires: readonly WireKind[], ground: Ground | undefined): readonly Run[] {
  const plain = wires.flatMap((each, kind): Run[] => (each.reachM >= way.wireM ? [[{ kind, way }]] : []))
  return [...plain, ...joinedRuns(way, wires, ground)]
}

/** Runs of two wires: one of them used up from either end, the other for the rest; and of three, where no two reach. */
function joinedRuns(way: Way, wires: readonly WireKind[], ground: Ground | undefined): readonly Run[] {
  const found: Run[] = []
  const turned = (run: Run): Run => run.map((part) => ({ ...part, way: wayBack(part.way) })).toReversed()
  for (const [kind, used] of wires.entries())
    for (const lengthM of wholeLengthsM(used)) {
      if (lengthM >= way.wireM) continue
      for (const isBack of [false, true]) {
        const along = isBack ? wayBack(way) : way
        const split = splitWay(along, lengthM, ground)
        if (!split) continue
        const [near, far] = split
        for (const [other, rest] of wires.entries()) {
          if (other === kind || rest.reachM < far.wireM) continue
          const run = [
            { kind, way: near },
            { kind: other, way: far },
          ]
          found.push(isBack ? turned(run) : run)
        }
      }
    }
  return found.length > 0 ? found : chainedRuns(way, wires, ground)
}

/** Runs of several wires, each used up before the next goes on, the longest first. */
function chainedRuns(way: Way, wires: readonly WireKind[], ground: Ground | undefined): readonly Run[] {
  const order = [...wires.keys()].sort((a, b) => wires[b]!.reachM - wires[a]!.reachM)
  const run: Part[] = []
  let left = way
  for (const kind of order) {
    const { reachM } = wires[kind]!
    if (reachM >= left.wireM) return run.length > 0 ? [[...run, { kind, way: left }]] : []
    const split = splitWay(left, reachM, ground)
    if (!split) continue
    run.push({ kind, way: split[0] })
    left = split[1]
  }
  return []
}
