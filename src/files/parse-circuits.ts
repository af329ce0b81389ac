import type { Supply } from '../catalog/supply'
import { connectedPieces, stationsOfLines } from '../plan/circuit-topology'
import type { CircuitId, LineId, StationId } from '../plan/id'
import { LIMITS } from '../plan/limits'
import type { Circuit, Over } from '../plan/plan'
import { ridingFaults } from '../plan/riding-faults'
import { type Check, idText, listOf, members, number, oneOf, recordOf, text } from '../plan/shape'
import type { Problem } from '../problem'
import { placeOf } from '../schema/faults'
import { valueWords } from '../schema/limit'
import { isObject, MOST_FAULTS } from '../schema/schema'
import { type KnownIds, reference, repeatedIds } from './known-ids'
import type { LineEnds } from './line-faults'
import { restOf } from './unknown-members'

const circuitShape = (known: KnownIds): Check => {
  const station = reference('The station', 'station', known.stations)
  const supply = members('The supply', {
    type: reference('The supply', 'supply', known.supplies),
    at: reference('The station of the supply', 'station', known.stations),
  })
  return members(
    'The circuit',
    {
      id: idText('The id of the circuit'),
      lines: listOf('The list of lines', reference('The line', 'line', known.lines), { min: 1 }),
    },
    {
      name: text('The name'),
      sets: recordOf('The member "sets"', station, reference('The set', 'set', known.sets)),
      supply: (value, at, faults) => {
        if (value !== null) supply(value, at, faults)
      },
      over: oneOf('What the circuit lies over', ['pair', 'phantom', 'simplex']),
      electrodeOhms: recordOf('The member "electrodeOhms"', station, number(LIMITS.electrodeOhms)),
    },
  )
}

/** The circuits of a file. `lines` holds every line whose two ends are sound. */
export function parseCircuits(
  value: unknown,
  known: KnownIds,
  lines: ReadonlyMap<LineId, LineEnds>,
  supplyKind: (type: string) => Supply['kind'] | undefined,
  faults: Problem[],
): ReadonlyMap<CircuitId, Circuit> {
  const circuits = new Map<CircuitId, Circuit>()
  const at = 'plan.circuits'
  const before = faults.length
  listOf('The list of circuits', circuitShape(known))(value, at, faults)
  if (!Array.isArray(value)) return circuits
  repeatedIds(value, at, faults)
  if (faults.length > MOST_FAULTS) return circuits
  pairFaults(value, lines, faults)
  value.forEach((each, index) => {
    if (faults.length <= MOST_FAULTS) topologyFaults(each, `${at}[${index}]`, lines, known, faults)
  })
  if (faults.length > before) return circuits
  for (const each of value) {
    const circuit = toCircuit(each)
    circuits.set(circuit.id, circuit)
  }
  const lineOf = (id: LineId) => {
    const line = lines.get(id)
    return line?.pairs === undefined ? undefined : { return: line.return, pairs: line.pairs }
  }
  const places = new Map([...circuits.keys()].map((id, index) => [id, `${at}[${index}]`]))
  for (const { code, circuit, member, message } of ridingFaults([...circuits.values()], {
    lineOf,
    supplyKind,
  }))
    faults.push({ code, at: `${places.get(circuit)}.${member}`, message })
  return circuits
}

/** Tells of circuits beyond the pairs of their lines. */
function pairFaults(
  circuits: readonly unknown[],
  lines: ReadonlyMap<LineId, LineEnds>,
  faults: Problem[],
): void {
  const used = new Map<LineId, number>()
  circuits.forEach((circuit, index) => {
    const seen = new Set<unknown>()
    // What rides on other circuits takes no pair of its own.
    if (isObject(circuit) && RIDERS.includes(circuit.over)) return
    lineIdsOf(circuit).forEach((id, k) => {
      if (seen.has(id)) return
      seen.add(id)
      const line = lines.get(id)
      const count = (used.get(id) ?? 0) + 1
      used.set(id, count)
      if (line?.pairs === undefined || count <= line.pairs) return
      const pairs = line.pairs === 1 ? 'one pair' : `${line.pairs} pairs`
      const message = `Line ${valueWords(id)} has ${pairs}, and this is circuit number ${count} on it: give the line more pairs, or take the circuit off it.`
      faults.push({ code: 'too-few-pairs', at: `plan.circuits[${index}].lines[${k}]`, message })
    })
  })
}

const RIDERS: readonly unknown[] = ['phantom', 'simplex'] satisfies Over[]

const lineIdsOf = (circuit: unknown): readonly LineId[] =>
  isObject(circuit) && Array.isArray(circuit.lines) ? circuit.lines : []

/** Tells of lines named twice, pieces that don't meet, sets and supplies off the circuit, where the ends of every line are sound. */
function topologyFaults(
  value: unknown,
  at: string,
  lines: ReadonlyMap<LineId, LineEnds>,
  known: KnownIds,
  faults: Problem[],
): void {
  const ids = lineIdsOf(value)
  if (!isObject(value) || ids.length === 0 || ids.some((id) => !lines.has(id))) return

  const seen = new Set<LineId>()
  ids.forEach((id, index) => {
    if (seen.has(id)) {
      const message = `Line ${valueWords(id)} is in the circuit already: name it once.`
      faults.push({ code: 'repeated-line', at: `${at}.lines[${index}]`, message })
    }
    seen.add(id)
  })

  const endsOf = (id: LineId) => lines.get(id)
  const [main, apart] = connectedPieces([...seen], endsOf)
  if (main && apart) {
    const message = `The circuit is in pieces: no line leads from ${valueWords(main[0])} to ${valueWords(apart[0])}. Take in the lines between them, or make two circuits.`
    faults.push({ code: 'unconnected', at: `${at}.lines`, message })
  }

  const stations = new Set<unknown>(stationsOfLines(ids, endsOf))
  const standsOff = (station: string, what: string, place: string) => {
    if (stations.has(station) || !known.stations.has(station)) return
    const message = `${what} stands at ${valueWords(station)}, where no line of the circuit leads: take such a line in, or move it.`
    faults.push({ code: 'off-circuit', at: place, message })
  }
  for (const station of isObject(value.sets) ? Object.keys(value.sets) : [])
    standsOff(station, 'A set', placeOf(`${at}.sets`, station))
  for (const station of isObject(value.electrodeOhms) ? Object.keys(value.electrodeOhms) : [])
    standsOff(station, 'An electrode', placeOf(`${at}.electrodeOhms`, station))
  const supplyAt = isObject(value.supply) ? value.supply.at : undefined
  if (typeof supplyAt === 'string') standsOff(supplyAt, 'The supply', `${at}.supply.at`)
}

interface CircuitFile {
  readonly id: CircuitId
  readonly name?: string
  readonly lines: readonly LineId[]
  readonly sets?: Readonly<Record<StationId, string>>
  readonly supply?: { readonly type: string; readonly at: StationId } | null
  readonly over?: 'pair' | Over
  readonly electrodeOhms?: Readonly<Record<StationId, number>>
}

function toCircuit(value: unknown): Circuit {
  const file = value as CircuitFile
  const { id, name = id, lines, sets = {}, supply = null, over = 'pair', electrodeOhms } = file
  const rest = restOf(file, ['id', 'name', 'lines', 'sets', 'supply', 'over', 'electrodeOhms'])
  const supplyRest = supply && restOf(supply, ['type', 'at'])
  return {
    id,
    name,
    lines: [...lines],
    sets: new Map(Object.entries(sets) as [StationId, string][]),
    supply: supply && { type: supply.type, at: supply.at, ...(supplyRest && { rest: supplyRest }) },
    ...(over !== 'pair' && { over }),
    ...(electrodeOhms && { electrodeOhms: { ...electrodeOhms } }),
    ...(rest && { rest }),
  }
}
