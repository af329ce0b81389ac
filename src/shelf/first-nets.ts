import { closedRing, spanningTree, star } from '../route/net-shapes'
import type { Country } from './country'
import { withJoints } from './joint-trees'
import { allOf, type Left, without } from './left'
import { type CircuitDesign, isThere, type NetDesign, takenBy, type WiredEdge } from './net-design'
import { type Edge, edge } from './net-shapes'
import { compareRanks } from './rank-nets'
import type { Run } from './runs'
import { type Blocks, likelySharings } from './sharing'
import type { WireKind } from './wire-kinds'

/** Steps of one search for wires on given edges; hubs from which stars are begun; batteries of one cell that are tried. */
const WIRING_STEPS = 4000
const HUBS = 3
const BATTERIES = 3
/** Mixtures of supplies that are begun from where a net has several circuits. */
const MIXTURES = 80
/** A telephone that is still to be chosen. */
const NONE_YET = -1
/** Nets to begin from: trees, stars, chains and rings with the best wire that reaches, every supply in its likeliest places. */
export function* firstNets(country: Country): Generator<NetDesign> {
  for (const blocks of likelySharings(country))
    for (const shape of shapesOver(country, blocks)) {
      const wired = wiredBlocks(country, shape)
      if (wired) yield* equipped(country, blocks, wired)
      const earthed = country.rods.length > 0 ? wiredBlocks(country, shape, 'earth') : undefined
      if (earthed) yield* equipped(country, blocks, earthed)
    }
}

/** Whether a tree, star or chain between all who must talk can be wired with what there is, as far as the search sees. */
export function seemsWireable(country: Country): boolean {
  for (const blocks of likelySharings(country))
    for (const shape of shapesOver(country, blocks)) if (wiredBlocks(country, shape)) return true
  return false
}

/** Edges for each block, shape by shape. */
function* shapesOver(country: Country, blocks: Blocks): Generator<readonly (readonly Edge[])[]> {
  const costs = blocks.map((block) =>
    block.map((a) => block.map((b) => (a === b ? 0 : country.way(...edge(a, b)).wireM))),
  )
  type Link = readonly [number, number]
  const over = (linksOf: (costs: number[][]) => readonly Link[] | undefined) => {
    const each = costs.map((of) => linksOf(of) ?? spanningTree(of)!)
    return each.map((links, k) => links.map(([a, b]) => edge(blocks[k]![a]!, blocks[k]![b]!)))
  }
  yield over(spanningTree)
  const trunks = blocks.map((block, k) => {
    const tree = spanningTree(costs[k]!)!.map(([a, b]) => edge(block[a]!, block[b]!))
    return withJoints(country, tree) ?? tree
  })
  if (trunks.some((tree, k) => tree.length >= blocks[k]!.length)) yield trunks
  const most = Math.max(...blocks.map(({ length }) => length))
  if (most < 3) return
  const sumOf = (row: readonly number[]) => row.reduce((a, b) => a + b, 0)
  for (let k = 0; k < Math.min(HUBS, most); k++)
    yield over((of) => {
      const hubs = [...of.keys()].sort((a, b) => sumOf(of[a]!) - sumOf(of[b]!))
      return star(of, hubs[Math.min(k, hubs.length - 1)]!)
    })
  yield over((of) => {
    const ring = closedRing(of)
    if (!ring) return undefined
    const longest = ring.reduce((a, b) => (of[b[0]]![b[1]]! > of[a[0]]![a[1]]! ? b : a))
    return ring.filter((link) => link !== longest)
  })
  yield over(closedRing)
}

/** Wire on every edge: the longest first, the best wire that still reaches; joined wires where none does alone, and the earth last or first. */
function wiredBlocks(
  country: Country,
  blocks: readonly (readonly Edge[])[],
  first: WireKind['by'] = 'pair',
): readonly (readonly WiredEdge[])[] | undefined {
  const wireM = ([a, b]: Edge) => country.way(a, b).wireM
  const edges = blocks
    .flatMap((own, block) => own.map((each) => ({ block, edge: each })))
    .sort((a, b) => wireM(b.edge) - wireM(a.edge))
  const chosen: number[] = []
  let steps = 0
  const by = (run: Run) => (run[0]!.rod === undefined ? 'pair' : 'earth')
  const ohms = (run: Run) => country.wires[run[0]!.kinds[0]!]!.wire.loopOhmPerKm
  const burden = (run: Run) => [by(run) === first ? 0 : 1, run.length, run[0]!.kinds.length, ohms(run)]
  const lay = (k: number, left: Left): boolean => {
    if (k === edges.length) return true
    const runs = country.runs(...edges[k]!.edge)
    const order = [...runs.keys()].sort((a, b) => compareRanks(burden(runs[a]!), burden(runs[b]!)))
    for (const run of order) {
      if (++steps > WIRING_STEPS) return false
      const after = without(country, left, runs[run]!)
      chosen[k] = run
      if (after && lay(k + 1, after)) return true
    }
    return false
  }
  if (!lay(0, allOf(country))) return undefined
  return blocks.map((_, block) =>
    edges.flatMap((each, k) => (each.block === block ? [{ edge: each.edge, run: chosen[k]! }] : [])),
  )
}

/** The same wires with no supply, and with each that there is at the places where most lines meet; each circuit with one of its own. */
function* equipped(
  country: Country,
  blocks: Blocks,
  wired: readonly (readonly WiredEdge[])[],
): Generator<NetDesign> {
  const tried = [null, ...triedSupplies(country)]
  for (const kinds of firstOf(choices(tried, blocks.length), MIXTURES))
    for (const turn of kinds.every((kind) => kind === null) ? [0] : [0, 1]) {
      const design = blocks.map((block, k): CircuitDesign => {
        const degree = (p: number) => wired[k]!.filter((each) => each.edge.includes(p)).length
        const at = block.toSorted((a, b) => degree(b) - degree(a))[Math.min(turn, block.length - 1)]!
        const kind = kinds[k]!
        return {
          edges: wired[k]!,
          sets: new Map(block.map((p) => [p, NONE_YET])),
          supply: kind === null ? null : { kind, at },
        }
      })
      const net = withSets(country, design)
      if (net && isThere(country, takenBy(country, net))) yield net
    }
}

/** Every choice of one of some things for each of so many: where there are many, all alike come first. */
function* choices<T>(of: readonly T[], count: number): Generator<readonly T[]> {
  for (const each of of) yield new Array<T>(count).fill(each)
  if (count < 2) return
  const mixed = function* (left: number): Generator<readonly T[]> {
    if (left === 0) yield []
    else for (const rest of mixed(left - 1)) for (const each of of) yield [each, ...rest]
  }
  for (const mixture of mixed(count)) if (new Set(mixture).size > 1) yield mixture
}

function* firstOf<T>(of: Iterable<T>, count: number): Generator<T> {
  let given = 0
  for (const each of of) {
    if (given++ >= count) return
    yield each
  }
}

/** Every supply; of batteries of one cell the largest, the smallest, and one between. */
function triedSupplies({ supplies }: Country): readonly number[] {
  const batteries = supplies.flatMap(({ cells }, kind) => (cells ? [{ kind, ...cells }] : []))
  const some = (of: readonly number[]) =>
    of.length <= BATTERIES ? of : [of.at(-1)!, of[Math.floor(of.length / 2)]!, of[0]!]
  return [
    ...supplies.flatMap(({ cells }, kind) => (cells ? [] : [kind])),
    ...[...new Set(batteries.map(({ cell }) => cell))].flatMap((cell) =>
      some(batteries.filter((each) => each.cell === cell).map(({ kind }) => kind)),
    ),
  ]
}

/** The likeliest telephones at every place: fed ones where something feeds them, else those with a battery and a crank of their own. */
function withSets(country: Country, design: NetDesign): NetDesign | undefined {
  const left = country.sets.map(({ count }) => count)
  const likelihood = (k: number, isFed: boolean): number => {
    const { talk, generator, ringer } = country.sets[k]!.set
    return ((talk === 'common') === isFed ? 4 : 0) + (generator ? 2 : 0) + (ringer ? 1 : 0)
  }
  const filled: CircuitDesign[] = []
  for (const circuit of design) {
    const supply = circuit.supply && country.supplies[circuit.supply.kind]!.supply
    const isFed = supply !== null && supply.kind !== 'board'
    const order = [...country.sets.keys()].sort(
      (a, b) => likelihood(b, isFed) - likelihood(a, isFed) || left[b]! - left[a]!,
    )
    const sets = new Map<number, number>()
    for (const place of circuit.sets.keys()) {
      const set = order.find((k) => left[k]! > 0)
      if (set === undefined) return undefined
      left[set]!--
      sets.set(place, set)
    }
    filled.push({ ...circuit, sets })
  }
  return filled
}
