import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { callsFrom } from './dc-call'
import { portOfEachSet, supplyPorts } from './supply-ports'
import { terminalsOf } from './terminals'

/** Who can call whom, and how. */
export interface Calls {
  /** Whether the set `a` can call the set `b`: by crank or ring source to its bell, or by the lamp at which `b` stands. */
  readonly calls: (a: number, b: number) => boolean
  /** Whether the lamp at the supply shows that this set has been lifted. */
  readonly lampShows: (set: number) => boolean
  /** The lamp: what flows through it while one set alone is lifted, mA, for each set that is not at the supply itself. */
  readonly lamp: { readonly mA: ReadonlyMap<number, number>; readonly minMA: number } | null
}

/**
 * How the sets of a circuit call each other. Over a board a crank makes the drop fall, and the operator rings on; an exchange rings any port
 * but the caller's own. A lamp shows a call only to whoever is at the supply's station, and only where at least
 * its `minMA` flow; a battery in one leg shows nothing before both are lifted.
 */
export function callsOf(model: CircuitModel, conditions: Conditions): Calls {
  const { sets, supply } = model
  const kind = supply?.supply.kind
  const isRung = Boolean(supply?.supply.ring) && kind !== 'series' && kind !== 'board'
  const portOf = portOfEachSet(model)
  const lamp = lampOf(model, conditions)
  const lampShows = (set: number) => {
    const mA = lamp?.mA.get(set) ?? 0
    return mA > 0 && mA >= lamp!.minMA
  }
  const isPassedOn = Boolean(supply?.supply.drop && supply.supply.generator)
  const calls = (a: number, b: number) => {
    const { node, set } = sets[b]!
    const isOwnPort = portOf[a] === portOf[b]
    if (kind === 'board') return Boolean(set.ringer && sets[a]!.set.generator && (isOwnPort || isPassedOn))
    if (kind === 'exchange' && isOwnPort) return false
    const bell = set.ringer && (isRung || (sets[a]!.set.generator && isOwnPort))
    return Boolean(bell) || (node === supply?.node && lampShows(a))
  }
  return { calls, lampShows, lamp }
}

function lampOf(model: CircuitModel, conditions: Conditions): Calls['lamp'] {
  const { supply } = model
  const indicator = supply?.supply.indicator
  const kind = supply?.supply.kind
  if (!supply || !indicator || kind === 'series' || kind === 'board') return null
  const mA = new Map<number, number>()
  const through = (circuit: CircuitModel, indices: readonly number[]) => {
    const call = callsFrom(circuit, conditions, terminalsOf(circuit, conditions, 0))
    for (const [k, { node }] of circuit.sets.entries())
      if (node !== circuit.supply!.node) mA.set(indices[k]!, 1000 * call([k]).amps)
  }
  const ports = supplyPorts(model)
  if (ports.length === 0) through(model, [...model.sets.keys()])
  for (const { circuit, setIndices } of ports) through(circuit, setIndices)
  return { mA, minMA: indicator.minMA ?? 0 }
}

/** What the people on a circuit do to call each other. Worded in `words/calling-words.ts`. */
export type HowToCall =
  /** A battery in one leg: nothing rings, and no lamp shows a call. */
  | { readonly how: 'agree' }
  /** Whoever turns the crank rings every other bell of the line. */
  | { readonly how: 'crank'; readonly bells: number; readonly without: readonly string[] }
  /** The unit rings the other side as soon as a handset is lifted. */
  | { readonly how: 'lift'; readonly sides: number }
  /** Whoever turns the crank is answered at the board, and put through. */
  | { readonly how: 'board'; readonly station: string; readonly without: readonly string[] }
  /** Whoever lifts dials, and the exchange rings. */
  | { readonly how: 'exchange' }
  /** The one at the supply rings every bell of the line. */
  | { readonly how: 'ring-from'; readonly station: string }
  /** A lamp at the supply lights when another set is lifted. */
  | { readonly how: 'lamp'; readonly station: string }
  | { readonly how: 'none' }

/** How one calls on a circuit, by the way that serves most of its people. */
export function howToCall(model: CircuitModel, conditions: Conditions): HowToCall {
  const { sets, supply, stations } = model
  const kind = supply?.supply.kind
  if (sets.length < 2) return { how: 'none' }
  if (kind === 'series') return { how: 'agree' }
  if (kind === 'exchange') return { how: supply?.supply.ring ? 'exchange' : 'none' }
  if (supply && kind === 'board') {
    const without = sets.filter(({ node, set }) => node !== supply.node && !set.generator)
    return {
      how: 'board',
      station: stations[supply.node]!,
      without: without.map(({ node }) => stations[node]!),
    }
  }
  const bells = sets.filter(({ set }) => set.ringer).length
  if (kind === 'ringdown' && supply?.supply.ring && bells > 0)
    return { how: 'lift', sides: supplyPorts(model).length }
  const without = sets.filter(({ set }) => !set.generator).map(({ node }) => stations[node]!)
  if (without.length < sets.length && bells > 0) {
    return {
      how: 'crank',
      bells: Math.min(bells, sets.length - 1),
      without: supply?.supply.ring ? [] : without,
    }
  }
  const station = supply && stations[supply.node]!
  if (station && supply.supply.ring && bells > 0) return { how: 'ring-from', station }
  const { lampShows } = callsOf(model, conditions)
  const isWatched = sets.some(({ node }) => node === supply?.node)
  if (station && isWatched && [...sets.keys()].some(lampShows)) return { how: 'lamp', station }
  return { how: 'none' }
}
