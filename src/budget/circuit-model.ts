import type { Catalog } from '../catalog/catalog'
import type { Supply } from '../catalog/supply'
import type { TelephoneSet } from '../catalog/telephone-set'
import type { Wire } from '../catalog/wire'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'

export interface ModelLine {
  readonly id: string
  /** Indices into `stations`. */
  readonly from: number
  readonly to: number
  readonly wire: Wire
  readonly wireM: number
  /** Ohms of the two electrodes of an earth return; null for a pair. */
  readonly electrodeOhms: readonly [number, number] | null
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
      ...(line.worn && { worn: line.worn }),
      ...(joints && wireM > 0 && { splices: splicesPerKm(plan.allowances, joints, wireM, isEarth ? 1 : 2) }),
    }
  })
  const sets = [...circuit.sets].map(([station, type]) => ({
    node: nodeOf(station),
    set: known(catalog.sets.get(type), `set ${type}`),
  }))
  const supply = circuit.supply && {
    supply: known(catalog.supplies.get(circuit.supply.type), `supply ${circuit.supply.type}`),
    node: nodeOf(circuit.supply.at),
  }
  return { stations: [...nodes.keys()], lines, sets, supply }
}
