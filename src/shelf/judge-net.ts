import { callsOf, type HowToCall, howToCall } from '../budget/calling'
import type { CircuitModel, ModelLine } from '../budget/circuit-model'
import type { Lack } from '../budget/circuit-notes'
import { circuitRows } from '../budget/circuit-rows'
import { completenessOf } from '../budget/completeness'
import { worstCorner } from '../budget/envelope'
import type { Check, Verdict } from '../budget/rows'
import { portOfEachSet } from '../budget/supply-ports'
import { leastMargin, RANK, verdictOf } from '../budget/verdict'
import type { Country } from './country'
import { type CircuitDesign, keyOf, type NetDesign, runOf } from './net-design'
import { strandsOf } from './runs'

/** How a circuit, or the weakest of a net's, stands. */
export interface Judged {
  readonly verdict: Verdict
  readonly worst: Verdict
  /** Least to spare, in nepers: today, and in the worst weather. */
  readonly today: number
  readonly worstNepers: number
  /** What has least to spare in the worst weather; today where it fails today. */
  readonly check: Check | null
  readonly lacks: readonly Lack[]
  /** Pairs of those who must be rung of whom neither can ring the other or show a light. */
  readonly silent: readonly (readonly [number, number])[]
  /** Whether all who must reach each other can speak. */
  readonly speaks: boolean
  readonly calling: readonly HowToCall[]
}

/**
 * The network of one circuit. Places are stations by their ids; a joint is one without a set.
 *
 * @param ohmsOf of one electrode of each kind of rods
 */
export function modelOf(
  country: Country,
  { edges, sets, supply }: CircuitDesign,
  ohmsOf: (rod: number) => number = (rod) => country.rods[rod]!.ohms,
): CircuitModel {
  const stations: string[] = []
  const nodes = new Map<number, number>()
  const nodeOf = (place: number): number => {
    const known = nodes.get(place)
    if (known !== undefined) return known
    nodes.set(place, stations.length)
    return stations.push(country.shelf.places[place]?.id ?? `in the open ${place}`) - 1
  }
  const lines: ModelLine[] = []
  for (const each of edges) {
    const run = runOf(country, each)
    let from = nodeOf(each.edge[0])
    const to = nodeOf(each.edge[1])
    for (const [k, part] of run.entries()) {
      const end = k === run.length - 1 ? to : stations.push(`joint ${stations.length}`) - 1
      for (const { kind, way, rod } of strandsOf(part)) {
        const { wire } = country.wires[kind]!
        const electrode = rod === undefined ? null : ohmsOf(rod)
        const electrodeOhms = electrode === null ? null : ([electrode, electrode] as const)
        lines.push({ id: `${lines.length}`, from, to: end, wire, wireM: way.wireM, electrodeOhms })
      }
      from = end
    }
  }
  return {
    stations,
    lines,
    sets: [...sets].map(([place, set]) => ({ node: nodeOf(place), set: country.sets[set]!.set })),
    supply: supply && { supply: country.supplies[supply.kind]!.supply, node: nodeOf(supply.at) },
  }
}

type Pair = readonly [number, number]

/** Of pairs of places that must reach each other over a circuit: whether all can speak, and those of whom neither can call the other. */
function reachIn(country: Country, model: CircuitModel, pairs: readonly Pair[]) {
  const { sets, stations, supply } = model
  const kind = supply?.supply.kind
  const { calls } = callsOf(model, country.conditions)
  const portOf = portOfEachSet(model)
  const setAt = (place: number) =>
    sets.findIndex(({ node }) => stations[node] === country.shelf.places[place]!.id)
  const isAtSupply = (k: number) => sets[k]!.node === supply?.node
  const cranks = (k: number) => Boolean(sets[k]!.set.generator)
  const canCall = (a: number, b: number): boolean => {
    if (kind === 'board' && (isAtSupply(a) || isAtSupply(b))) return true
    // One side of a ringdown unit is not rung when a handset of its own is lifted there.
    if (kind === 'ringdown' && portOf[a] === portOf[b]) return cranks(a) || cranks(b)
    return calls(a, b) || calls(b, a)
  }
  const canSpeak = (a: number, b: number) => kind !== 'series' || isAtSupply(a) || isAtSupply(b)
  return {
    speaks: pairs.every(([a, b]) => canSpeak(setAt(a), setAt(b))),
    silent: pairs.filter((pair) => mustRing(country, pair) && !canCall(setAt(pair[0]), setAt(pair[1]))),
  }
}

const mustRing = ({ shelf }: Country, [a, b]: Pair): boolean =>
  !shelf.agree.some(([c, d]) => a === c && b === d)

/** Judges circuits, and remembers what it said of each. */
export interface Judge {
  readonly circuit: (design: CircuitDesign) => Judged
  readonly net: (design: NetDesign) => Judged
  /** Circuits judged so far. */
  readonly count: () => number
  /** What that has cost: lines and pairs of sets. */
  readonly work: () => number
}

/** What judging a circuit costs: its lines, and the pairs of its sets. */
export const workOf = ({ edges, sets }: CircuitDesign): number => edges.length + sets.size ** 2

/** What was said of circuits between the same places, by their keys. */
export type Verdicts = Map<string, Judged>

/** @param known what was said before, of another shelf between the same places too */
export function judgeOf(country: Country, known: Verdicts = new Map()): Judge {
  let [work, count] = [0, 0]
  const circuit = (design: CircuitDesign): Judged => {
    const key = keyOf(country, design)
    const before = known.get(key)
    if (before) return before
    const judged = judgeModel(country, modelOf(country, design), pairsOf(country, design))
    known.set(key, judged)
    work += workOf(design)
    count++
    return judged
  }
  return { circuit, net: (design) => weakest(design.map(circuit)), count: () => count, work: () => work }
}

/** How a net stands where the soil about its earth rods is as dry as such soil can be. */
export function judgedInDrySoil(country: Country, design: NetDesign): Pick<Judged, 'verdict' | 'worst'> {
  const ohmsOf = (rod: number) => country.rods[rod]!.mostOhms
  return weakest(
    design.map((each) => judgeModel(country, modelOf(country, each, ohmsOf), pairsOf(country, each))),
  )
}

const pairsOf = ({ shelf }: Country, { sets }: CircuitDesign): readonly Pair[] =>
  shelf.talk.filter((pair) => pair.every((place) => sets.has(place)))

function judgeModel(country: Country, model: CircuitModel, pairs: readonly Pair[]): Judged {
  const today = country.conditions
  const { missing } = completenessOf(model, today)
  const rows = circuitRows(model, today)
  const verdict = verdictOf(rows, missing)
  const least = leastMargin(rows)
  const base = {
    verdict,
    today: least?.nepers ?? 0,
    lacks: missing,
    ...reachIn(country, model, pairs),
    calling: [howToCall(model, today)],
  }
  // At worst it is never better than today.
  if (verdict === 'fails')
    return { ...base, worst: 'fails', worstNepers: base.today, check: least?.check ?? null }
  const worst = worstCorner(model, today, missing, rows)
  return {
    ...base,
    worst: worst.verdict,
    worstNepers: worst.least?.nepers ?? 0,
    check: worst.least?.check ?? null,
  }
}

/** The least of several circuits in everything. */
function weakest(each: readonly Judged[]): Judged {
  const lower = (a: Verdict, b: Verdict) => (RANK[a] <= RANK[b] ? a : b)
  return each.reduce((a, b) => ({
    verdict: lower(a.verdict, b.verdict),
    worst: lower(a.worst, b.worst),
    today: Math.min(a.today, b.today),
    worstNepers: Math.min(a.worstNepers, b.worstNepers),
    check: b.worstNepers < a.worstNepers ? b.check : a.check,
    lacks: [...a.lacks, ...b.lacks],
    silent: [...a.silent, ...b.silent],
    speaks: a.speaks && b.speaks,
    calling: [...a.calling, ...b.calling],
  }))
}
