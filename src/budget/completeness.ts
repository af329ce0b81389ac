import type { CircuitModel } from './circuit-model'
import type { Lack, Remark } from './circuit-notes'
import { ringerEquivalents } from './ringer'
import { portOfEachSet, supplyPorts } from './supply-ports'

/** What the figures of a circuit do not show. */
export interface Completeness {
  /** What it cannot do without: any makes it fail. */
  readonly missing: readonly Lack[]
  /** What its people should know. */
  readonly notes: readonly Remark[]
}

/** Pairs of sets named one by one before the rest is only counted. */
const NAMED_PAIRS = 4

/** Looks for what a circuit lacks: a supply for common-battery sets, a bell or lamp between each two sets. */
export function completenessOf(model: CircuitModel): Completeness {
  const missing: Lack[] = []
  const notes: Remark[] = []
  const { sets, supply, stations } = model
  const at = (index: number) => stations[sets[index]!.node]!

  if (sets.length < 2) missing.push({ code: 'one-set' })
  for (const [index, { set }] of sets.entries()) {
    if (set.talk === 'common' && !supply) missing.push({ code: 'no-supply', station: at(index) })
  }
  if (supply?.supply.kind === 'series') {
    notes.push({ code: 'battery-rings-nothing' })
    const station = stations[supply.node]!
    if (!sets.some(({ node }) => node === supply.node)) missing.push({ code: 'battery-without-set', station })
    else if (sets.length > 2) notes.push({ code: 'only-with-battery', station })
  }
  if (supply) notes.push(...supplyNotes(model))

  const silent = pairsWithoutCall(model)
  for (const [a, b] of silent.slice(0, NAMED_PAIRS)) missing.push({ code: 'no-call', a: at(a), b: at(b) })
  if (silent.length > NAMED_PAIRS)
    missing.push({ code: 'more-without-call', count: silent.length - NAMED_PAIRS })
  return { missing, notes }
}

/** Pairs of sets of which neither can call the other: no crank to a bell, no ring source to a bell, no lamp at the supply. */
function pairsWithoutCall(model: CircuitModel): [number, number][] {
  const { sets, supply } = model
  if (supply?.supply.kind === 'series') return []
  if (supply?.supply.indicator) return []
  const rung = Boolean(supply?.supply.ring)
  const portOf = portOfEachSet(model)
  const calls = (a: number, b: number) =>
    Boolean(sets[b]!.set.ringer && (rung || (sets[a]!.set.generator && portOf[a] === portOf[b])))
  const silent: [number, number][] = []
  for (let a = 0; a < sets.length; a++) {
    for (let b = a + 1; b < sets.length; b++) if (!calls(a, b) && !calls(b, a)) silent.push([a, b])
  }
  return silent
}

function supplyNotes(model: CircuitModel): Remark[] {
  const notes: Remark[] = []
  const { supply } = model.supply!
  if (supply.indicator && supply.volts <= supply.indicator.forwardVolts)
    notes.push({ code: 'indicator-takes-all', supply: supply.name, volts: supply.volts })
  const ring = supply.ring
  const ports = supplyPorts(model)
  const circuits = ports.length > 0 ? ports.map(({ circuit }) => circuit) : [model]
  for (const circuit of circuits) {
    const stations = circuit.sets.map(({ node }) => circuit.stations[node]!)
    if (ports.length > 0 && stations.length > 1) notes.push({ code: 'same-port', stations })
    if (!ring?.maxLoad || supply.kind === 'series') continue
    const load = circuit.sets.reduce(
      (sum, { set }) => sum + (set.ringer ? ringerEquivalents(set.ringer, ring.hz) : 0),
      0,
    )
    const { maxLoad } = ring
    if (load > maxLoad) notes.push({ code: 'bells-over-load', stations, load, supply: supply.name, maxLoad })
  }
  return notes
}
