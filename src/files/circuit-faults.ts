import type { Supply } from '../catalog/supply'
import { connectedPieces, stationsOfLines } from '../plan/circuit-topology'
import type { LineId } from '../plan/id'
import type { Over, Plan } from '../plan/plan'
import { ridingFaults } from '../plan/riding-faults'
import type { Problem } from '../problem'
import { placeOf } from '../schema/faults'
import { valueWords } from '../schema/limit'
import type { KnownIds } from '../schema/plain-values'
import { isObject, MOST_FAULTS } from '../schema/schema'
import { repeatedIds } from './known-ids'
import type { LineEnds } from './line-faults'

/**
 * Tells what circuits say against each other and against their lines, so far as each is sound.
 *
 * @param lines every line whose two ends are sound
 */
export function circuitFaults(
  value: unknown,
  known: KnownIds,
  lines: ReadonlyMap<LineId, LineEnds>,
  faults: Problem[],
): void {
  if (!Array.isArray(value)) return
  const at = 'plan.circuits'
  repeatedIds(value, at, faults)
  if (faults.length > MOST_FAULTS) return
  pairFaults(value, lines, faults)
  value.forEach((each, index) => {
    if (faults.length <= MOST_FAULTS) topologyFaults(each, `${at}[${index}]`, lines, known, faults)
  })
}

/** Tells what circuits that have no fault of their own say as riders on each other. */
export function riderFaults(
  circuits: Plan['circuits'],
  lines: ReadonlyMap<LineId, LineEnds>,
  supplyKind: (type: string) => Supply['kind'] | undefined,
  faults: Problem[],
): void {
  const lineOf = (id: LineId) => {
    const line = lines.get(id)
    return line?.pairs === undefined ? undefined : { return: line.return, pairs: line.pairs }
  }
  const places = new Map([...circuits.keys()].map((id, index) => [id, `plan.circuits[${index}]`]))
  const found = ridingFaults([...circuits.values()], { lineOf, supplyKind })
  for (const { code, circuit, member, message } of found)
    faults.push({ code, at: `${places.get(circuit)}.${member}`, message })
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
    if (stations.has(station) || !known.station?.has(station)) return
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
