import { BUILT_IN } from '../catalog/built-in'
import { isolated } from '../isolated'
import { recordsOf } from '../plan/field-records'
import type { CircuitId, LineId, StationId } from '../plan/id'
import { type Circuit, circuitName, lineName, type Plan, stationName } from '../plan/plan'

/**
 * Leaves out what names something that nobody knows any more: a line to a station that went too long ago, a telephone of no catalog. It can
 * only come of a hand that was away for months, or that makes things up. What is merely taken out comes back instead.
 *
 * @param known plans in which what is taken out can still be found
 */
export function dropDangling(
  plan: Plan,
  known: readonly Plan[],
): { readonly plan: Plan; readonly told: readonly string[] } {
  const all = [plan, ...known]
  const told: string[] = []
  const inAny = (kind: 'stations' | 'lines', id: string) =>
    all.some((each) => (each[kind] as ReadonlyMap<string, unknown>).has(id))
  const isEntry = (kind: 'wires' | 'sets' | 'supplies', id: string) =>
    [BUILT_IN, ...all.map(({ catalog }) => catalog)].some((entries) =>
      (entries[kind] as readonly { readonly id: string }[]).some((entry) => entry.id === id),
    )
  const soundLine = (id: LineId): boolean =>
    all.some((each) => {
      const line = each.lines.get(id)
      return line !== undefined && [line.from, line.to].every((end) => inAny('stations', end))
    })

  const lines = new Map(plan.lines)
  for (const line of plan.lines.values()) {
    if (!soundLine(line.id)) {
      lines.delete(line.id)
      told.push(`A line led to a station that nobody knows; it is left out.`)
    } else if (!isEntry('wires', line.wire)) {
      const wire = BUILT_IN.wires[0]!
      lines.set(line.id, { ...line, wire: wire.id })
      told.push(`${lineName(plan, line)} was of wire that nobody knows; it is ${wire.name} now.`)
    }
  }
  const circuits = new Map<CircuitId, Circuit>()
  for (const circuit of plan.circuits.values()) {
    const kept = circuit.lines.filter(soundLine)
    const isSet = ([station, set]: readonly [StationId, string]) =>
      inAny('stations', station) && isEntry('sets', set)
    const sets = new Map([...circuit.sets].filter(isSet))
    const isFed =
      circuit.supply && inAny('stations', circuit.supply.at) && isEntry('supplies', circuit.supply.type)
    const supply = isFed ? circuit.supply : null
    const isWhole =
      kept.length === circuit.lines.length && sets.size === circuit.sets.size && supply === circuit.supply
    circuits.set(circuit.id, isWhole ? circuit : { ...circuit, lines: kept, sets, supply })
    if (!isWhole)
      told.push(`${circuitName(plan, circuit)} named things that nobody knows; they are left out.`)
  }
  const stock = plan.stock.filter(({ wire }) => isEntry('wires', wire))
  const ids = new Set(all.flatMap((each) => recordsOf(each).map(({ id }) => id)))
  const field = recordsOf(plan).filter(
    (each) => soundLine(each.line) && (each.kind !== 'undone' || ids.has(each.record)),
  )
  const foreign = plan.unknown?.features ?? []
  const features = foreign.filter((each) => !isTaken(plan, String((each as { id?: unknown }).id)))
  if (
    told.length === 0 &&
    stock.length === plan.stock.length &&
    field.length === recordsOf(plan).length &&
    features.length === foreign.length
  )
    return { plan, told }
  const { field: _, ...others } = plan
  const left = { ...others, lines, circuits, stock, ...(field.length > 0 && { field }) }
  return {
    plan: features.length === foreign.length ? left : { ...left, unknown: { ...plan.unknown, features } },
    told,
  }
}

const isTaken = ({ stations, lines, hazards }: Plan, id: string): boolean =>
  [stations, lines, hazards].some((things: ReadonlyMap<string, unknown>) => things.has(id))

/** A set or a supply where no line of its circuit leads any more, nor ever led as far as anybody knows. */
export function takeOffCircuit(
  plan: Plan,
  circuit: Circuit,
  station: StationId,
): { readonly circuit: Circuit; readonly sentence: string } {
  const sets = new Map(circuit.sets)
  sets.delete(station)
  return {
    circuit: { ...circuit, sets, supply: circuit.supply?.at === station ? null : circuit.supply },
    sentence: `What stood at ${isolated(stationName(plan, station))} is off ${circuitName(plan, circuit)}, of which no line leads there.`,
  }
}
