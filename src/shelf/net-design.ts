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
  // Without one a tree has fewer lines than telephones.
  edges.length < sets.size
    ? []
    : [...new Set(edges.flatMap(({ edge }) => edge))].filter((place) => !sets.has(place))

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

const taken = new WeakMap<NetDesign, Taken>()

export function takenBy(country: Country, design: NetDesign): Taken {
  const known = taken.get(design)
  if (known) return known
  const wireM = country.wires.map((): number[] => [])
  const sets = country.sets.map(() => 0)
  const supplies = country.supplies.map(() => 0)
  const cells = country.cells.map(() => 0)
  const rods = country.rods.map(() => 0)
  for (const circuit of design) {
    for (const each of circuit.edges)
      for (const { kinds, way, rod } of runOf(country, each))
        for (const kind of kinds) {
          wireM[kind]!.push(way.wireM)
          if (rod !== undefined) rods[rod]! += RODS_OF_A_LINE
        }
    for (const set of circuit.sets.values()) sets[set]!++
    if (!circuit.supply) continue
    const { cells: of } = country.supplies[circuit.supply.kind]!
    if (of) cells[of.cell]! += of.each
    else supplies[circuit.supply.kind]!++
  }
  const all = { wireM, sets, supplies, cells, rods }
  taken.set(design, all)
  return all
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

const runKeys = new WeakMap<Run, string>()
const circuitKeys = new WeakMap<CircuitDesign, string>()

function keyOfRun({ wires, rods }: Country, run: Run): string {
  const known = runKeys.get(run)
  if (known !== undefined) return known
  const key = run
    .flatMap(strandsOf)
    .map(({ kind, way, rod }) => {
      const earth = rod === undefined ? '' : `~${rods[rod]!.ohms}`
      return `${wires[kind]!.wire.id}${earth}*${way.wireM.toFixed(2)}`
    })
    .join('+')
  runKeys.set(run, key)
  return key
}

/**
 * The same text for the same circuit, however its edges came about: by what lies and stands where, so that it holds on another shelf
 * between the same places too.
 */
export function keyOf(country: Country, circuit: CircuitDesign): string {
  const known = circuitKeys.get(circuit)
  if (known !== undefined) return known
  const { edges, sets, supply } = circuit
  const nameOf = (place: number) =>
    place < country.positions.length ? String(place) : country.positionOf(place).join()
  const lines = edges.map((each) => {
    const [a, b] = each.edge
    return `${nameOf(a)}-${nameOf(b)}:${keyOfRun(country, runOf(country, each))}`
  })
  const at = [...sets].map(([place, set]) => `${place}=${country.sets[set]!.set.id}`)
  const fed = supply ? `${country.supplies[supply.kind]!.supply.id}@${supply.at}` : ''
  const key = `${lines.sort().join(' ')}|${at.sort().join(' ')}|${fed}`
  circuitKeys.set(circuit, key)
  return key
}

/** The same text for the same net. */
export const keyOfNet = (country: Country, design: NetDesign): string =>
  design.length === 1
    ? keyOf(country, design[0]!)
    : design
        .map((each) => keyOf(country, each))
        .sort()
        .join('\n')
