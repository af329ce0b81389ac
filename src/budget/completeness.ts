import { type Calls, callsOf } from './calling'
import type { CircuitModel } from './circuit-model'
import type { Lack, LackOf, Remark } from './circuit-notes'
import type { Conditions } from './conditions'
import { bellsTakenForLifted } from './lifted-bells'
import { ringerEquivalents } from './ringer'
import { portOfEachSet, supplyPorts } from './supply-ports'
import { coilNotes, switchboardLacks } from './switchboard-notes'

/** What the figures of a circuit do not show. */
export interface Completeness {
  /** What it cannot do without: any makes it fail. */
  readonly missing: readonly Lack[]
  /** What its people should know. */
  readonly notes: readonly Remark[]
}

/** Pairs of sets named one by one before the rest is only counted. */
const NAMED_PAIRS = 4

/**
 * Looks for what a circuit lacks: a supply for common-battery sets, a bell or lamp between each two sets, a supply that can tell a bell
 * from a lifted handset.
 */
export function completenessOf(model: CircuitModel, conditions: Conditions): Completeness {
  const missing: Lack[] = []
  const notes: Remark[] = []
  const { sets, supply, stations } = model
  const nameAt = (index: number) => stations[sets[index]!.node]!

  if (sets.length < 2 && !model.trunks) missing.push({ code: 'one-set' })
  for (const [index, { set }] of sets.entries()) {
    if (set.talk === 'common' && !supply) missing.push({ code: 'no-supply', station: nameAt(index) })
  }
  if (supply?.supply.kind === 'series') {
    notes.push({ code: 'battery-rings-nothing' })
    const station = stations[supply.node]!
    if (!sets.some(({ node }) => node === supply.node)) missing.push({ code: 'battery-without-set', station })
    else if (sets.length > 2) notes.push({ code: 'only-with-battery', station })
  }
  if (supply) notes.push(...supplyNotes(model))
  missing.push(...switchboardLacks(model))
  notes.push(...coilNotes(model))

  const calls = callsOf(model, conditions)
  const { silent, oneWay } = pairsWithoutCall(model, calls)
  for (const [a, b] of silent.slice(0, NAMED_PAIRS)) {
    const at = supply && stations[supply.node]!
    missing.push({
      code: 'no-call',
      a: nameAt(a),
      b: nameAt(b),
      lamp: at ? lampFor(calls, at, [a, b]) : null,
    })
  }
  if (silent.length > NAMED_PAIRS)
    missing.push({ code: 'more-without-call', count: silent.length - NAMED_PAIRS })
  if (oneWay.length > 0)
    notes.push({ code: 'lamp-one-way', at: stations[supply!.node]!, others: oneWay.map(nameAt) })
  const lifted = bellsTakenForLifted(model, conditions)
  missing.push(...lifted.missing)
  const bare = bareEnds(model)
  if (sets.length > 1 && bare.length > 0) notes.push({ code: 'nobody-listens', stations: bare })
  notes.push(...lifted.notes, ...wornNotes(model))
  return { missing, notes }
}

/** Pairs of sets of which neither can call the other; and sets that can call the one at the lamp, but not be called by it. */
function pairsWithoutCall(
  model: CircuitModel,
  { calls, lampShows }: Calls,
): { readonly silent: readonly (readonly [number, number])[]; readonly oneWay: readonly number[] } {
  const { sets, supply } = model
  if (supply?.supply.kind === 'series') return { silent: [], oneWay: [] }
  const silent: [number, number][] = []
  const portOf = portOfEachSet(model)
  // The operator calls nobody and is called by nobody; of two on one port of an exchange all is told at once.
  const isTold = (a: number, b: number) =>
    (supply?.supply.kind === 'board' && [a, b].some((k) => sets[k]!.node === supply.node)) ||
    (supply?.supply.kind === 'exchange' && portOf[a] === portOf[b])
  for (let a = 0; a < sets.length; a++) {
    for (let b = a + 1; b < sets.length; b++)
      if (!calls(a, b) && !calls(b, a) && !isTold(a, b)) silent.push([a, b])
  }
  const watching = sets.findIndex(({ node }) => node === supply?.node)
  const oneWay = [...sets.keys()].filter(
    (k) => watching !== -1 && k !== watching && lampShows(k) && !calls(watching, k),
  )
  return { silent, oneWay }
}

function lampFor({ lamp }: Calls, at: string, pair: readonly number[]): LackOf<'no-call'>['lamp'] {
  if (!lamp) return null
  const callers = pair.filter((k) => lamp.mA.has(k))
  if (callers.length === pair.length) return { why: 'elsewhere', at }
  const mA = Math.max(...callers.map((k) => lamp.mA.get(k)!))
  return { why: 'dim', at, mA, minMA: lamp.minMA }
}

function wornNotes({ lines }: CircuitModel): Remark[] {
  const unknown = lines.filter(({ worn, wire }) => worn && wire.wornMicroSPerKm === undefined)
  return [...new Set(unknown.map(({ wire }) => wire.name))].map((wire) => ({ code: 'worn-unknown', wire }))
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
    if (supply.kind === 'ringdown' && stations.length > 1) notes.push({ code: 'same-port', stations })
    if (!ring?.maxLoad || supply.kind === 'series' || supply.kind === 'board') continue
    const load = circuit.sets.reduce(
      (sum, { set }) => sum + (set.ringer ? ringerEquivalents(set.ringer, ring.hz) : 0),
      0,
    )
    const { maxLoad } = ring
    if (load > maxLoad) notes.push({ code: 'bells-over-load', stations, load, supply: supply.name, maxLoad })
  }
  return notes
}

/** Stations where wire ends with nothing on it. */
function bareEnds({ stations, lines, sets, supply, trunks }: CircuitModel): readonly string[] {
  const wires = new Map<number, number>()
  for (const { from, to } of lines) for (const node of [from, to]) wires.set(node, (wires.get(node) ?? 0) + 1)
  const taken = new Set([...sets.map(({ node }) => node), ...(supply ? [supply.node] : [])])
  const ofBoards = new Set(trunks?.from.map(({ at }) => at))
  return stations.filter((id, node) => wires.get(node) === 1 && !taken.has(node) && !ofBoards.has(id))
}
