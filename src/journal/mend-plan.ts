import { BUILT_IN } from '../catalog/built-in'
import { isolated } from '../isolated'
import { connectedPieces, stationsOfLines } from '../plan/circuit-topology'
import { recordsOf, recordsWithout } from '../plan/field-records'
import type { CircuitId, LineId, StationId } from '../plan/id'
import { withoutLines } from '../plan/line-removal'
import { type Circuit, circuitName, type Line, lineName, type Plan, stationName } from '../plan/plan'
import { pairsNeeded } from '../plan/riding'
import { withCircuit, withLine, withStation } from '../plan/with-feature'
import { dropDangling, takeOffCircuit } from './drop-dangling'
import { mendRiders } from './mend-riders'

/** What the merged plan was made of, in no order that tells whose is whose. */
export type Sources = readonly Plan[]

interface Mending {
  plan: Plan
  readonly sources: Sources
  readonly told: string[]
}

/**
 * Mends what two hands' edits together contradict, by stated rules: a thing that is used stays; a line between one station takes
 * its old ends back; a circuit in pieces becomes several; more circuits than pairs bring more pairs. Each mending is told.
 */
export function mendPlan(
  plan: Plan,
  sources: Sources,
): { readonly plan: Plan; readonly mended: readonly string[] } {
  const sound = dropDangling(plan, sources)
  const mending: Mending = { plan: sound.plan, sources, told: [...sound.told] }
  bringBackUndone(mending)
  bringBackRecorded(mending)
  bringBackUsed(mending)
  dropLeftRecords(mending)
  untieLoops(mending)
  splitPieces(mending)
  const riders = mendRiders(mending.plan)
  mending.plan = riders.plan
  mending.told.push(...riders.told)
  addPairs(mending)
  return { plan: mending.plan, mended: mending.told }
}

const firstOf = <T>(sources: Sources, find: (plan: Plan) => T | undefined): T | undefined => {
  for (const source of sources) {
    const found = find(source)
    if (found !== undefined) return found
  }
  return undefined
}

/** Records that went with their line while another hand undid one of them: what is undone has to be there. */
function bringBackUndone(mending: Mending): void {
  const there = new Map(recordsOf(mending.plan).map((each) => [each.id, each]))
  for (const each of there.values()) {
    if (each.kind !== 'undone' || there.has(each.record)) continue
    const undone = firstOf(mending.sources, (source) =>
      recordsOf(source).find(({ id }) => id === each.record),
    )
    if (undone) there.set(undone.id, undone)
  }
  const field = [...there.values()]
  if (field.length > recordsOf(mending.plan).length) mending.plan = { ...mending.plan, field }
}

/** Lines that one hand took out while the other recorded something on them. */
function bringBackRecorded(mending: Mending): void {
  const known = new Set(recordsOf(mending.sources.at(-1)!).map(({ id }) => id))
  for (const { id, line } of recordsOf(mending.plan))
    if (!known.has(id)) bringBackLine(mending, line, 'something was recorded on it')
}

/** What both knew of a line goes with it, where nobody brought it back. */
function dropLeftRecords(mending: Mending): void {
  const { field: _, ...plan } = mending.plan
  const lines = recordsOf(mending.plan).map(({ line }) => line)
  const gone = new Set(lines.filter((id) => !plan.lines.has(id)))
  if (gone.size > 0) mending.plan = { ...plan, ...recordsWithout(mending.plan, gone) }
}

/** Lines of a circuit that are gone, stations that a line ends on, lines that lead to a set or a supply, entries that are in use. */
function bringBackUsed(mending: Mending): void {
  for (const circuit of [...mending.plan.circuits.values()]) bringBackLines(mending, circuit)
  for (const line of [...mending.plan.lines.values()]) {
    for (const id of [line.from, line.to]) bringBackStation(mending, id)
    bringBackEntry(mending, 'wires', line.wire)
  }
  for (const { wire } of mending.plan.stock) bringBackEntry(mending, 'wires', wire)
  for (const { sets, supply } of mending.plan.circuits.values()) {
    for (const set of sets.values()) bringBackEntry(mending, 'sets', set)
    if (supply) bringBackEntry(mending, 'supplies', supply.type)
  }
}

function bringBackLines(mending: Mending, circuit: Circuit): void {
  const { sources, told } = mending
  const lines = new Set(circuit.lines)
  let left = circuit
  for (const id of circuit.lines) bringBackLine(mending, id)
  const reached = () => new Set(stationsOfLines([...lines], (id) => mending.plan.lines.get(id)))
  const used = [...circuit.sets.keys(), ...(circuit.supply ? [circuit.supply.at] : [])]
  for (const station of used) {
    if (reached().has(station)) continue
    const leading = firstOf(sources, (source) => {
      const found = source.circuits
        .get(circuit.id)
        ?.lines.filter((id) => endsAt(source.lines.get(id), station))
      return found && found.length > 0 ? found : undefined
    })
    if (!leading) {
      const off = takeOffCircuit(mending.plan, left, station)
      left = off.circuit
      told.push(off.sentence)
      continue
    }
    for (const id of leading) {
      bringBackLine(mending, id)
      lines.add(id)
    }
    told.push(
      `A line to ${stationName(mending.plan, station)} was taken out of ${circuitName(mending.plan, circuit)} while something was set up there; it stays.`,
    )
  }
  if (left === circuit && lines.size === circuit.lines.length && lines.size > 0) return
  if (lines.size > 0) putCircuit(mending, { ...left, lines: [...lines] })
  else dropCircuit(mending, circuit)
}

const endsAt = (line: Line | undefined, station: StationId): boolean =>
  line?.from === station || line?.to === station

function bringBackLine(mending: Mending, id: LineId, use = 'a circuit was led over it'): void {
  const { plan, sources, told } = mending
  if (plan.lines.has(id)) return
  const line = firstOf(sources, (source) => source.lines.get(id))
  if (!line) throw new Error(`line ${id} stands in none of the merged plans`)
  mending.plan = withLine(plan, line)
  for (const end of [line.from, line.to]) bringBackStation(mending, end)
  told.push(`${lineName(mending.plan, line)} was taken out while ${use}; it stays.`)
}

function bringBackStation(mending: Mending, id: StationId): void {
  const { plan, sources, told } = mending
  if (plan.stations.has(id)) return
  const station = firstOf(sources, (source) => source.stations.get(id))
  if (!station) throw new Error(`station ${id} stands in none of the merged plans`)
  mending.plan = withStation(plan, station)
  told.push(`${isolated(station.name || id)} was taken out while a line was led to it; it stays.`)
}

function bringBackEntry(mending: Mending, kind: 'wires' | 'sets' | 'supplies', id: string): void {
  const { plan, sources, told } = mending
  const entries: readonly { readonly id: string; readonly name: string }[] = plan.catalog[kind]
  const has = (each: { readonly id: string }) => each.id === id
  if (entries.some(has) || BUILT_IN[kind].some(has)) return
  const entry = firstOf(sources, (source) =>
    (source.catalog[kind] as readonly { id: string; name: string }[]).find(has),
  )
  if (!entry) throw new Error(`${id} is in none of the merged catalogs`)
  mending.plan = { ...plan, catalog: { ...plan.catalog, [kind]: [...entries, entry] } }
  told.push(`${entry.name} was taken out of the plan’s own entries while it was in use; it stays.`)
}

/** A line of which one hand moved this end and the other that end to one station takes its ends back. */
function untieLoops(mending: Mending): void {
  for (const line of [...mending.plan.lines.values()]) {
    if (line.from !== line.to) continue
    const sound = firstOf(mending.sources, (source) => {
      const before = source.lines.get(line.id)
      return before && before.from !== before.to ? before : undefined
    })
    if (!sound) {
      mending.plan = withoutLines(mending.plan, new Set([line.id]))
      mending.told.push(
        `A line was led from ${stationName(mending.plan, line.from)} to itself; it is left out.`,
      )
      continue
    }
    for (const end of [sound.from, sound.to]) bringBackStation(mending, end)
    mending.plan = withLine(mending.plan, { ...line, from: sound.from, to: sound.to })
    mending.told.push(
      `Both ends of a line were led to ${stationName(mending.plan, line.from)}; it keeps its old ends.`,
    )
  }
}

/** The piece with the supply, else the first, stays the circuit; every other becomes one of its own, with its sets. */
function splitPieces(mending: Mending): void {
  for (const circuit of [...mending.plan.circuits.values()]) {
    const endsOf = (id: LineId) => mending.plan.lines.get(id)
    const pieces = connectedPieces(circuit.lines, endsOf).map((lines) => {
      const stations = new Set(stationsOfLines(lines, endsOf))
      const sets = new Map([...circuit.sets].filter(([station]) => stations.has(station)))
      return {
        ...circuit,
        lines,
        sets,
        supply: circuit.supply && stations.has(circuit.supply.at) ? circuit.supply : null,
      }
    })
    if (pieces.length < 2) continue
    const heir = pieces.find(({ supply }) => supply) ?? pieces[0]!
    let count = 2
    for (const piece of pieces) {
      if (piece === heir) putCircuit(mending, piece)
      else {
        while (mending.plan.circuits.has(`${circuit.id}-${count}` as CircuitId)) count++
        putCircuit(mending, {
          ...piece,
          id: `${circuit.id}-${count}` as CircuitId,
          name: `${circuit.name} ${count}`,
        })
      }
    }
    mending.told.push(
      `${circuitName(mending.plan, circuit)} fell into ${pieces.length} pieces; each is a circuit of its own now.`,
    )
  }
}

function addPairs(mending: Mending): void {
  const used = new Map<LineId, number>()
  const onLine = new Map<LineId, Circuit[]>()
  for (const circuit of mending.plan.circuits.values())
    for (const id of circuit.lines) onLine.set(id, [...(onLine.get(id) ?? []), circuit])
  for (const [id, circuits] of onLine) used.set(id, pairsNeeded(circuits))
  for (const [id, pairs] of used) {
    const line = mending.plan.lines.get(id)!
    if (pairs <= line.pairs) continue
    mending.plan = withLine(mending.plan, { ...line, pairs })
    mending.told.push(
      `${lineName(mending.plan, line)} carries circuits on ${pairs} pairs now; it has as many for them.`,
    )
  }
}

function putCircuit(mending: Mending, circuit: Circuit): void {
  mending.plan = withCircuit(mending.plan, circuit)
}

function dropCircuit(mending: Mending, circuit: Circuit): void {
  const circuits = new Map(mending.plan.circuits)
  circuits.delete(circuit.id)
  mending.plan = { ...mending.plan, circuits }
  mending.told.push(`${circuitName(mending.plan, circuit)} has no line left, and is gone.`)
}
