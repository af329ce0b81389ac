import { layWire } from '../materials/lay-wire'
import { wantedLine } from '../materials/wanted-wire'
import type { LineId } from '../plan/id'
import { DEFAULT_ALLOWANCES } from '../plan/plan'
import type { Country, Run } from './country'
import type { Edge } from './net-shapes'

/** Wire between two places: one run, or two side by side, joined at both ends. Runs are indices into `country.runs`. */
export interface WiredEdge {
  readonly edge: Edge
  readonly runs: readonly number[]
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

export const runsOf = (country: Country, { edge: [a, b], runs }: WiredEdge): readonly Run[] =>
  runs.map((run) => country.runs(a, b)[run]!)

/** What a net takes off the shelf. */
export interface Taken {
  /** Lengths of each kind of wire, m. */
  readonly wireM: readonly (readonly number[])[]
  readonly sets: readonly number[]
  readonly supplies: readonly number[]
  readonly cells: readonly number[]
}

export function takenBy(country: Country, design: NetDesign): Taken {
  const wireM = country.wires.map((): number[] => [])
  const sets = country.sets.map(() => 0)
  const supplies = country.supplies.map(() => 0)
  const cells = country.cells.map(() => 0)
  for (const circuit of design) {
    for (const each of circuit.edges)
      for (const run of runsOf(country, each)) for (const { kind, way } of run) wireM[kind]!.push(way.wireM)
    for (const set of circuit.sets.values()) sets[set]!++
    if (!circuit.supply) continue
    const { cells: of } = country.supplies[circuit.supply.kind]!
    if (of) cells[of.cell]! += of.each
    else supplies[circuit.supply.kind]!++
  }
  return { wireM, sets, supplies, cells }
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0)

/** Whether there is enough of everything, wire by its lengths alone. */
export function isThere(country: Country, taken: Taken): boolean {
  return (
    taken.wireM.every((lengths, k) => sum(lengths) <= country.wires[k]!.reachM) &&
    taken.sets.every((count, k) => count <= country.sets[k]!.count) &&
    taken.supplies.every((count, k) => count <= country.supplies[k]!.count) &&
    taken.cells.every((count, k) => count <= country.cells[k]!)
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

const keyOfEdge = ({ edge: [a, b], runs }: WiredEdge) => `${a}-${b}:${runs.join('+')}`

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
