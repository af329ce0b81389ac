import type { Catalog } from '../catalog/catalog'
import type { Supply } from '../catalog/supply'
import type { TelephoneSet } from '../catalog/telephone-set'
import type { Wire } from '../catalog/wire'
import type { MeasuredLine } from '../measure/measured'
import type { LineId, StationId } from '../plan/id'
import { type Circuit, DEFAULT_COIL, type Over, type Plan } from '../plan/plan'
import { circuitsWithCoils } from '../plan/riding'
import { type TrunkEnds, trunksAt } from './trunk-ends'

export interface ModelLine {
  readonly id: string
  /** Indices into `stations`. */
  readonly from: number
  readonly to: number
  readonly wire: Wire
  readonly wireM: number
  /** Ohms of the two electrodes of an earth return; null for a pair. */
  readonly electrodeOhms: readonly [number, number] | null
  /** Two pairs of it as the two conductors, or one pair and the earth; absent: a pair of it, or one conductor and the earth. */
  readonly over?: Over
  readonly worn?: true
  /** What splices add, spread evenly over the line: ohms in its wires, and leakage when wet. */
  readonly splices?: { readonly ohmPerKm: number; readonly wetSiemensPerKm: number }
}

export interface ModelSet {
  readonly node: number
  readonly set: TelephoneSet
}

/** One circuit as a network: stations are nodes by index, lines join them, sets and the supply stand at them. */
export interface CircuitModel {
  readonly stations: readonly string[]
  readonly lines: readonly ModelLine[]
  readonly sets: readonly ModelSet[]
  readonly supply: { readonly supply: Supply; readonly node: number } | null
  /** Lines between the very same stations, of a circuit that differs from this one in figures alone: what follows from the shape is kept by them. */
  readonly shapedAs?: readonly ModelLine[]
  /** What the repeating coils at both ends take off speech and off ringing together, dB; absent: it has none. */
  readonly coils?: { readonly voiceDb: number; readonly ringDb: number }
  readonly over?: Over
  /** Trunks at its board: lines of its own that lead to another board, and ports that other boards' lines take here. */
  readonly trunks?: TrunkEnds
}

/** @param joints splices in the pair  @param wires wires that each of them joins */
function splicesPerKm(
  { spliceOhms = 0, spliceMicroS = 0 }: Plan['allowances'],
  joints: number,
  wireM: number,
  wires: number,
) {
  const perKm = (joints * 1000) / wireM
  return { ohmPerKm: perKm * wires * spliceOhms, wetSiemensPerKm: perKm * spliceMicroS * 1e-6 }
}

const known = <T>(value: T | undefined, what: string): T => {
  if (value === undefined) throw new Error(`the plan names ${what}, which nothing defines`)
  return value
}

/**
 * The network of one circuit of a checked plan. Throws where the plan names what does not exist.
 *
 * @param splices splices in one pair of each line, where the plan gives them ohms or a leakage
 */
export function circuitModel(
  plan: Plan,
  circuit: Circuit,
  catalog: Catalog,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  splices?: ReadonlyMap<LineId, number>,
): CircuitModel {
  const nodes = new Map<string, number>()
  const nodeOf = (station: string): number => {
    const index = nodes.get(station) ?? nodes.size
    nodes.set(station, index)
    return index
  }
  const lines = circuit.lines.map((id): ModelLine => {
    const line = known(plan.lines.get(id), `line ${id}`)
    const { wireM } = known(measured.get(id), `line ${id}`)
    const isEarth = line.return === 'earth'
    const joints = splices?.get(id)
    return {
      id,
      from: nodeOf(line.from),
      to: nodeOf(line.to),
      wire: known(catalog.wires.get(line.wire), `wire ${line.wire}`),
      wireM,
      electrodeOhms: isEarth ? (line.electrodeOhms ?? [0, 0]) : null,
      ...(circuit.over && { over: circuit.over }),
      ...(line.worn && { worn: line.worn }),
      ...(joints && wireM > 0 && { splices: splicesPerKm(plan.allowances, joints, wireM, isEarth ? 1 : 2) }),
    }
  })
  const stations = [...nodes.keys()]
  /** A simplex stands on the earth at each set: its electrode is a wire of no length to a node of the set's own. */
  const behindElectrode = (station: StationId): number | undefined => {
    const ohms =
      circuit.over === 'simplex' && station !== circuit.supply?.at && circuit.electrodeOhms?.[station]
    const near = lines.find(({ from, to }) => stations[from] === station || stations[to] === station)
    if (!ohms || !near) return undefined
    const node = stations.push(station) - 1
    lines.push({ ...near, from: nodeOf(station), to: node, wireM: 0, electrodeOhms: [ohms, 0] })
    return node
  }
  const sets = [...circuit.sets].map(([station, type]) => ({
    node: behindElectrode(station) ?? nodeOf(station),
    set: known(catalog.sets.get(type), `set ${type}`),
  }))
  const supply = circuit.supply && {
    supply: known(catalog.supplies.get(circuit.supply.type), `supply ${circuit.supply.type}`),
    node: nodeOf(circuit.supply.at),
  }
  const { voiceDb, ringDb } = plan.allowances.coil ?? DEFAULT_COIL
  const trunks = trunksAt(plan, circuit, catalog)
  return {
    stations,
    lines,
    sets,
    supply,
    ...(circuitsWithCoils(plan).has(circuit.id) && { coils: { voiceDb: 2 * voiceDb, ringDb: 2 * ringDb } }),
    ...(circuit.over && { over: circuit.over }),
    ...(trunks && { trunks }),
  }
}
