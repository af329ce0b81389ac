import type { Country } from './country'
import { jointTrees } from './joint-trees'
import { allOf, type Left, without } from './left'
import type { CircuitDesign, NetDesign, WiredEdge } from './net-design'
import { type Edge, everyRing, everyTree } from './net-shapes'
import { waysToShare } from './sharing'

/** Beyond so many places nets are not even counted: there are millions. */
const MOST_PLACES = 6

const less = (left: readonly number[], k: number, by: number): readonly number[] =>
  left.map((each, i) => (i === k ? each - by : each))

/**
 * Every net that can be made of a shelf: every tree and every closed ring between the places of each circuit, every run of wire on each of
 * its edges, every telephone at every place, no supply or each of them at every place; and of trees with joints in the open those that take so
 * much less wire than some tree without. What there is not enough wire for is cut off as soon as its lengths tell.
 *
 * Undefined where there are too many places to count them.
 */
export function everyNet(country: Country): Generator<NetDesign> | undefined {
  if (country.shelf.places.length > MOST_PLACES) return undefined
  return netsShared(country)
}

function* netsShared(country: Country): Generator<NetDesign> {
  for (const blocks of waysToShare(country)) yield* circuitsFor(country, blocks, allOf(country))
}

function* circuitsFor(
  country: Country,
  [block, ...others]: readonly (readonly number[])[],
  left: Left,
): Generator<NetDesign> {
  if (!block) {
    yield []
    return
  }
  for (const edges of shapesOf(country, block))
    for (const [wired, afterWire] of wiring(country, edges, left))
      for (const [sets, afterSets] of setting(country, block, afterWire))
        for (const [supply, after] of supplying(country, block, afterSets)) {
          const circuit: CircuitDesign = { edges: wired, sets, supply }
          if (isStarved(country, circuit)) continue
          for (const rest of circuitsFor(country, others, after)) yield [circuit, ...rest]
        }
}

/** Whether a telephone that must be fed is on a circuit that sends no direct current: it fails, whatever else there is. */
function isStarved({ sets, supplies }: Country, circuit: CircuitDesign): boolean {
  if (circuit.supply && supplies[circuit.supply.kind]!.supply.kind !== 'board') return false
  return [...circuit.sets.values()].some((set) => sets[set]!.set.talk === 'common')
}

function* shapesOf(country: Country, places: readonly number[]): Generator<readonly Edge[]> {
  yield* treesOf(country, places)
  yield* everyRing(places)
}

/** Every tree between some places, and those with joints in the open. */
export function* treesOf(country: Country, places: readonly number[]): Generator<readonly Edge[]> {
  yield* everyTree(places)
  yield* jointTrees(country, places)
}

/** Every wire on every edge, as far as it reaches. */
export function* wiring(
  country: Country,
  [edge, ...others]: readonly Edge[],
  left: Left,
): Generator<readonly [readonly WiredEdge[], Left]> {
  if (!edge) {
    yield [[], left]
    return
  }
  const leastM = others.reduce((sum, [a, b]) => sum + country.way(a, b).wireM, 0)
  for (const [run, parts] of country.runs(...edge).entries()) {
    const after = without(country, left, parts)
    if (!after || after.wireM.reduce((a, b) => a + b, 0) < leastM) continue
    for (const [rest, end] of wiring(country, others, after)) yield [[{ edge, run }, ...rest], end]
  }
}

/** Every telephone at every place. */
function* setting(
  country: Country,
  places: readonly number[],
  left: Left,
): Generator<readonly [ReadonlyMap<number, number>, Left]> {
  const [place, ...others] = places
  if (place === undefined) {
    yield [new Map(), left]
    return
  }
  for (const set of country.sets.keys()) {
    if (left.sets[set]! < 1) continue
    const one = { ...left, sets: less(left.sets, set, 1) }
    for (const [rest, end] of setting(country, others, one)) yield [new Map([[place, set], ...rest]), end]
  }
}

/** No supply, and every supply at every place. */
function* supplying(
  country: Country,
  places: readonly number[],
  left: Left,
): Generator<readonly [CircuitDesign['supply'], Left]> {
  yield [null, left]
  for (const [kind, { cells }] of country.supplies.entries()) {
    const isLeft = cells ? left.cells[cells.cell]! >= cells.each : left.supplies[kind]! >= 1
    if (!isLeft) continue
    const after: Left = cells
      ? { ...left, cells: less(left.cells, cells.cell, cells.each) }
      : { ...left, supplies: less(left.supplies, kind, 1) }
    for (const at of places) yield [{ kind, at }, after]
  }
}
