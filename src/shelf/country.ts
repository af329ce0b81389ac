import { type Conditions, conditionsOf } from '../budget/conditions'
import { CELLS } from '../catalog/cells'
import type { Supply } from '../catalog/supply'
import type { TelephoneSet } from '../catalog/telephone-set'
import { onGlobe, type Position } from '../geo/position'
import type { Ground } from '../terrain/ground'
import { batteriesOf } from './battery'
import { bendsFor, madeUpPlaces } from './made-up-places'
import { type RodKind, rodKinds } from './rod-kinds'
import { type Run, runsAlong } from './runs'
import type { Counted, Shelf } from './shelf'
import { type Way, wayAlong } from './ways'
import { type WireKind, wireKinds } from './wire-kinds'

/** A supply that could be taken, and what it takes off the shelf: itself, or so many cells. */
interface SupplyKind {
  readonly supply: Supply
  readonly count: number
  /** Index of the cell, and how many of them; absent where it is taken as it stands. */
  readonly cells?: { readonly cell: number; readonly each: number }
}

/** A shelf with its places, made ready to be searched: things by index, and every way with its lengths. */
export interface Country {
  readonly shelf: Shelf
  readonly conditions: Conditions
  readonly positions: readonly Position[]
  /** Whether the positions are made up, and only the lengths of ways count. */
  readonly isMadeUp: boolean
  readonly wires: readonly WireKind[]
  readonly rods: readonly RodKind[]
  readonly sets: readonly { readonly set: TelephoneSet; readonly count: number }[]
  readonly supplies: readonly SupplyKind[]
  readonly cells: readonly number[]
  /** From the lower index to the higher. */
  readonly way: (a: number, b: number) => Way
  /** Every run of wire that can be made between two places with what there is, those of one wire first. */
  readonly runs: (a: number, b: number) => readonly Run[]
  /** The index of a place that is none of the shelf's, where lines may be joined in the open. */
  readonly joint: (position: Position) => number
  readonly positionOf: (place: number) => Position
  /** The place of a joint in the open between three, over the ground where it is known; undefined where places have none. */
  readonly meeting: Meeting | undefined
  /** Whether ways are led over the ground, and may be laid otherwise than on it. */
  readonly isLed: boolean
}

/** Ways that are known already, over the ground; `undefined` where a straight line is to be taken. */
export type KnownWays = (from: Position, to: Position) => Pick<Way, 'bends' | 'lays'> | undefined

/** Where lines from three places meet best over the ground; undefined where nothing better than the plane's is known. */
type Meeting = (a: Position, b: Position, c: Position) => Position | undefined

/** What is known of where wire may go. */
export interface Terms {
  readonly knownWays?: KnownWays | undefined
  readonly meeting?: Meeting | undefined
  /** Elevations, where they are known. */
  readonly ground?: Ground | undefined
}

export function countryOf(shelf: Shelf, { knownWays, meeting, ground }: Terms = {}): Country {
  const { places, distancesM, have, catalog, weather, wireTempC } = shelf
  const isMadeUp = distancesM !== null && places.some(({ position }) => position === null)
  const positions = isMadeUp ? madeUpPlaces(distancesM) : places.map(({ position }) => position!)
  const joints: Position[] = []
  const positionOf = (place: number) => positions[place] ?? joints[place - positions.length]!
  const [wires, rods] = [wireKinds(shelf), rodKinds(shelf)]
  const way = remembered((a, b): Way => {
    const [from, to] = [positionOf(a), positionOf(b)]
    const course = knownWays?.(from, to)
    const bends = course?.bends ?? (distancesM ? bendsFor(from, to, distancesM[a]![b]!) : [])
    const lays = course?.lays ?? [...bends, to].map(() => 'surface' as const)
    return wayAlong({ from, to, bends, lays }, ground)
  })
  const cells = merged(have.cells)
  return {
    shelf,
    conditions: conditionsOf(weather, wireTempC),
    positions,
    isMadeUp,
    wires,
    rods,
    sets: merged(have.sets).map(({ id, count }) => ({ set: catalog.sets.get(id)!, count })),
    supplies: [
      ...merged(have.supplies).map(({ id, count }) => ({ supply: catalog.supplies.get(id)!, count })),
      ...cells.flatMap(({ id, count, measured }, cell) =>
        batteriesOf(CELLS.find((each) => each.id === id)!, { count, volts: measured?.volts }, (other) =>
          catalog.supplies.has(other),
        ).map(
          ({ supply, cells: each }): SupplyKind => ({
            supply,
            count: Math.floor(count / each),
            cells: { cell, each },
          }),
        ),
      ),
    ],
    cells: cells.map(({ count }) => count),
    way,
    runs: remembered((a, b) => runsAlong(way(a, b), { wires, rods, ground })),
    joint: (position) => {
      const at = onGlobe(position)
      const known = joints.findIndex(([lon, lat]) => lon === at[0] && lat === at[1])
      return positions.length + (known < 0 ? joints.push(at) - 1 : known)
    },
    positionOf,
    isLed: knownWays !== undefined,
    meeting: distancesM === null ? (meeting ?? (() => undefined)) : undefined,
  }
}

function remembered<T>(reckon: (a: number, b: number) => T): (a: number, b: number) => T {
  const known = new Map<string, T>()
  return (a, b) => {
    const key = `${a} ${b}`
    const before = known.get(key)
    if (before !== undefined) return before
    const found = reckon(a, b)
    known.set(key, found)
    return found
  }
}

/** Things that are alike, counted together; none that there is none of. */
function merged(list: readonly Counted[]): readonly Counted[] {
  const counts = new Map<string, Counted>()
  for (const each of list) {
    if (each.count < 1) continue
    const key = `${each.id} ${each.measured?.volts ?? ''}`
    counts.set(key, { ...each, count: each.count + (counts.get(key)?.count ?? 0) })
  }
  return [...counts.values()]
}
