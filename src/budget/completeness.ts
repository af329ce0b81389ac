import type { CircuitModel } from './circuit-model'
import { ringdownPorts } from './circuit-rows'
import { ringerEquivalents } from './ringer'

/** What the figures of a circuit do not show. */
export interface Completeness {
  /** What it cannot do without. One sentence each; any makes it fail. */
  readonly missing: readonly string[]
  /** What its people should know. */
  readonly notes: readonly string[]
}

/** Pairs of sets named one by one before the rest is only counted. */
const NAMED_PAIRS = 4

/** Looks for what a circuit lacks: a supply for common-battery sets, a bell or lamp between each two sets. @param nameOf station id → name */
export function completenessOf(model: CircuitModel, nameOf: (station: string) => string): Completeness {
  const missing: string[] = []
  const notes: string[] = []
  const { sets, supply } = model
  const at = (index: number) => nameOf(model.stations[sets[index]!.node]!)

  if (sets.length < 2) missing.push('A circuit needs a set at two stations at least.')
  for (const [index, { set }] of sets.entries()) {
    if (set.talk === 'common' && !supply) {
      missing.push(`The common-battery set at ${at(index)} has no supply on its circuit.`)
    }
  }
  if (supply?.supply.kind === 'series') {
    notes.push(
      'A battery in one leg rings nothing: agree on times to call, or listen for a shout on the line.',
    )
    const here = nameOf(model.stations[supply.node]!)
    if (!sets.some(({ node }) => node === supply.node)) {
      missing.push(`The battery stands in a leg of the set at ${here}, and no set stands there.`)
    } else if (sets.length > 2) {
      notes.push(`Only calls with the set at ${here} have current: the others cannot talk to each other.`)
    }
  }
  if (supply) notes.push(...supplyNotes(model, nameOf))

  const silent = pairsWithoutCall(model)
  for (const [a, b] of silent.slice(0, NAMED_PAIRS)) {
    missing.push(`${at(a)} and ${at(b)} have no way to call each other by bell or lamp.`)
  }
  if (silent.length > NAMED_PAIRS) {
    missing.push(`${silent.length - NAMED_PAIRS} more pairs of sets have no way to call each other.`)
  }
  return { missing, notes }
}

/** Pairs of sets of which neither can call the other: no crank to a bell, no ring source to a bell, no lamp at the supply. */
function pairsWithoutCall(model: CircuitModel): [number, number][] {
  const { sets, supply } = model
  if (supply?.supply.kind === 'series') return []
  if (supply?.supply.indicator) return []
  const rung = Boolean(supply?.supply.ring)
  const portOf = new Map<number, number>()
  for (const [port, { setIndices }] of ringdownPorts(model).entries()) {
    for (const set of setIndices) portOf.set(set, port)
  }
  const calls = (a: number, b: number) =>
    Boolean(sets[b]!.set.ringer && (rung || (sets[a]!.set.generator && portOf.get(a) === portOf.get(b))))
  const silent: [number, number][] = []
  for (let a = 0; a < sets.length; a++) {
    for (let b = a + 1; b < sets.length; b++) if (!calls(a, b) && !calls(b, a)) silent.push([a, b])
  }
  return silent
}

function supplyNotes(model: CircuitModel, nameOf: (station: string) => string): string[] {
  const notes: string[] = []
  const { supply } = model.supply!
  if (supply.indicator && supply.volts <= supply.indicator.forwardVolts) {
    notes.push(`The indicator of ${supply.name} takes all of its ${supply.volts} V: no current flows.`)
  }
  const ring = supply.ring
  const ports = ringdownPorts(model)
  const circuits = ports.length > 0 ? ports.map(({ circuit }) => circuit) : [model]
  for (const circuit of circuits) {
    const names = circuit.sets.map(({ node }) => nameOf(circuit.stations[node]!)).join(' and ')
    if (ports.length > 0 && circuit.sets.length > 1) {
      notes.push(
        `${names} hang on one side of the unit: it does not ring one of them when another is lifted.`,
      )
    }
    if (!ring?.maxLoad || supply.kind === 'series') continue
    const load = circuit.sets.reduce(
      (sum, { set }) => sum + (set.ringer ? ringerEquivalents(set.ringer, ring.hz) : 0),
      0,
    )
    if (load > ring.maxLoad) {
      notes.push(
        `The bells at ${names} are a load of ${load.toFixed(1)}; ${supply.name} is made for ${ring.maxLoad}.`,
      )
    }
  }
  return notes
}
