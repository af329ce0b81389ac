import { layWire } from '../materials/lay-wire'
import { wantedLine } from '../materials/wanted-wire'
import type { LineId } from '../plan/id'
import { DEFAULT_ALLOWANCES } from '../plan/plan'
import type { Country } from './country'
import type { Edge } from './net-shapes'
import { type Run, strandsOf } from './runs'

/** Wire between two places, by its index into `country.runs`. */
export interface WiredEdge {
  readonly edge: Edge
  readonly run: number
}

/** One circuit, by indices of the country's things. */
export interface CircuitDesign {
  readonly edges: readonly WiredEdge[]
  /** The set at each place: index of the place, index of the set. */
  readonly sets: ReadonlyMap<number, number>
  readonly supply: { readonly kind: number; readonly at: number } | null
}

/** A whole net. */
export type NetDesign = readonly CircuitDesign[]

export const runOf = (country: Country, { edge: [a, b], run }: WiredEdge): Run => country.runs(a, b)[run]!

/** Places of a circuit that have no telephone: its lines are joined there in the open. */
export const jointsOf = ({ edges, sets }: CircuitDesign): readonly number[] =>
  [...new Set(edges.flatMap(({ edge }) => edge))].filter((place) => !sets.has(place))

/** What a net takes off the shelf. */
export interface Taken {
  /** Lengths of each kind of wire, m. */
  readonly wireM: readonly (readonly number[])[]
  readonly sets: readonly number[]
  readonly supplies: readonly number[]
  readonly cells: readonly number[]
  readonly rods: readonly number[]
}

/** An earth return has a rod of its own at either end. */
export const RODS_OF_A_LINE = 2

export function takenBy(country: Country, design: NetDesign): Taken {
  const wireM = country.wires.map((): number[] => [])
  const sets = country.sets.map(() => 0)
  const supplies = country.supplies.map(() => 0)
  const cells = country.cells.map(() => 0)
  const rods = country.rods.map(() => 0)
  for (const circuit of design) {
    for (const { kind, way, rod } of circuit.edges
      .flatMap((each) => runOf(country, each))
      .flatMap(strandsOf)) {
      wireM[kind]!.push(way.wireM)
      if (rod !== undefined) rods[rod]! += RODS_OF_A_LINE
    }
    for (const set of circuit.sets.values()) sets[set]!++
    if (!circuit.supply) continue
    const { cells: of } = country.supplies[circuit.supply.kind]!
    if (of) cells[of.cell]! += of.each
    else supplies[circuit.supply.kind]!++
  }
  return { wireM, sets, supplies, cells, rods }
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0)

/** Whether there is enough of everything, wire by its lengths alone, and each wire used in one way. */
export function isThere(country: Country, taken: Taken): boolean {
  const pools = taken.wireM.flatMap((lengths, k) => (lengths.length > 0 ? [country.wires[k]!.pool] : []))
  return (
    new Set(pools).size === pools.length &&
    taken.wireM.every((lengths, k) => sum(lengths) <= country.wires[k]!.reachM) &&
    taken.sets.every((count, k) => count <= country.sets[k]!.count) &&
    taken.supplies.every((count, k) => count <= country.supplies[k]!.count) &&
    taken.cells.every((count, k) => count <= country.cells[k]!) &&
    taken.rods.every((count, k) => count <= country.rods[k]!.count)
  )
}

export const totalWireM = ({ wireM }: Taken): number => sum(wireM.map(sum))

/** How wire is cut from the spools that there are: splices, and what is left of the spools used; undefined where it cannot be. */
export interface Cutting {
  readonly splices: number
  readonly leftM: number
}

/** Cuts the wire of a net from the shelf's spools, each wire by itself, as a plan's spools are shared out. */
export function cutting(country: Country, { wireM }: Taken): Cutting | undefined {
  const { spliceWasteM: wasteM } = DEFAULT_ALLOWANCES
  let [splices, leftM] = [0, 0]
  for (const [k, lengths] of wireM.entries()) {
    if (lengths.length === 0) continue
    const { wire, spools } = country.wires[k]!
    const lines = lengths.map((each, i) => wantedLine(`${i}` as LineId, each, 1, []))
    const { figures } = layWire({
      wire: wire.id,
      kgPerKm: wire.kgPerKm,
      kinds: spools,
      wasteM,
      reservePct: 0,
      lines,
    })
    if (figures.notLaid.length > 0 || figures.missingM > 0) return undefined
    splices += figures.splices
    leftM += figures.leftM
  }
  return { splices, leftM }
}

const keyOfEdge = ({ edge: [a, b], run }: WiredEdge) => `${a}-${b}:${run}`

/** The same text for the same circuit, however its edges came about. */
export const keyOf = ({ edges, sets, supply }: CircuitDesign): string =>
  [
    edges.map(keyOfEdge).toSorted().join(' '),
    [...sets]
      .map(([place, set]) => `${place}=${set}`)
      .toSorted()
      .join(' '),
    supply ? `${supply.kind}@${supply.at}` : '',
  ].join('|')
