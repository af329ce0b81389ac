import { RANK } from '../budget/verdict'
import type { Country } from './country'
import { JOINT_WORTH_M } from './joint-trees'
import type { Judged } from './judge-net'
import {
  type CircuitDesign,
  jointsOf,
  type NetDesign,
  RODS_OF_A_LINE,
  runOf,
  type Taken,
  takenBy,
  totalWireM,
} from './net-design'
import { shapeOf } from './net-shapes'

/** A net that was judged. */
export interface Candidate {
  readonly design: NetDesign
  readonly judged: Judged
  readonly taken: Taken
  readonly wireM: number
  readonly supplies: number
  /** Joints in the open. */
  readonly joints: number
  /** Lines that return through the earth. */
  readonly earthed: number
}

export function candidate(country: Country, design: NetDesign, judged: Judged): Candidate {
  const taken = takenBy(country, design)
  const supplies = design.filter(({ supply }) => supply).length
  const joints = design.reduce((sum, circuit) => sum + jointsOf(circuit).length, 0)
  const earthed = taken.rods.reduce((sum, count) => sum + count / RODS_OF_A_LINE, 0)
  return { design, judged, taken, wireM: totalWireM(taken), supplies, joints, earthed }
}

const MOST_STEPS = 5

/**
 * What a net has to spare at worst, in steps of a tenth of what is needed, up to half as much again: beyond, more is not worth a metre
 * of wire. Steps and limit are allowances.
 */
const spareSteps = ({ worstNepers }: Judged): number =>
  Math.floor(Math.min(10 * (Math.exp(worstNepers) - 1), MOST_STEPS) + 1e-9)

/** Wire is told apart by the metre. */
const metres = (m: number): number => Math.round(m)

/**
 * The figures by which nets are ranked, each the more the better, compared from the first to the last: whether it holds at worst; how many of
 * those who must be rung can ring or light each other; verdict; verdict at worst; the fewest lines that return through the earth; what is to
 * spare at worst, by the tenth; the least wire, a joint in the open counted as so much more of it; the fewest splices; the fewest supplies; what is to spare, to the last digit.
 *
 * A net that fails is ranked by how near it comes: whether all can speak, what it lacks, and its least margin today.
 */
export function rankOf(
  { judged, wireM, supplies, joints, earthed }: Candidate,
  splices = 0,
): readonly number[] {
  const { verdict, worst, silent, lacks, today, worstNepers, speaks } = judged
  if (verdict === 'fails' || !speaks)
    return [-1, speaks ? 1 : 0, -lacks.length, today, -earthed, -metres(wireM)]
  return [
    worst === 'fails' ? 0 : 1,
    -silent.length,
    RANK[verdict],
    RANK[worst],
    -earthed,
    spareSteps(judged),
    -metres(wireM + JOINT_WORTH_M * joints),
    -splices,
    -supplies,
    worstNepers,
  ]
}

/** Above 0 where the first rank is the better. */
export function compareRanks(a: readonly number[], b: readonly number[]): number {
  for (const [k, figure] of a.entries())
    if (figure !== b[k]) return figure - (b[k] ?? Number.NEGATIVE_INFINITY)
  return 0
}

export const isGood = ({ judged }: Candidate): boolean => judged.verdict !== 'fails' && judged.speaks

/** How a net stands by its rank, without what it has to spare and what it costs. */
export const standing = (rank: readonly number[]): readonly number[] => rank.slice(0, 4)

/** The best that any net could come to, as far as wire tells: nothing amiss, all that is to spare that counts, and no metre too many. */
export const mostRank = (leastWireM: number): readonly number[] => [
  1,
  0,
  RANK.works,
  RANK.works,
  0,
  MOST_STEPS,
  -metres(leastWireM),
]

/** Whether a supply feeds no telephone of its circuit and calls nobody: it stands there for nothing. */
function isIdle({ sets, supplies }: Country, circuit: CircuitDesign): boolean {
  if (!circuit.supply) return false
  const { kind, ring, indicator } = supplies[circuit.supply.kind]!.supply
  if (kind !== 'series' && (kind !== 'feed' || ring || indicator)) return false
  return [...circuit.sets.values()].every((set) => sets[set]!.set.talk !== 'common')
}

/** What nets truly differ in: how they are called and fed, and how their lines lie. */
export function kindOf(country: Country, { design, judged }: Candidate): string {
  const circuits = design.map((circuit, k) => {
    const { edges, sets } = circuit
    const isFor = !isIdle(country, circuit)
    const supply = isFor ? circuit.supply : null
    const cranks = [...sets.values()].some((set) => country.sets[set]!.set.generator)
    return [
      isFor || !cranks ? (judged.calling[k]?.how ?? '') : 'crank',
      supply ? country.supplies[supply.kind]!.supply.kind : '',
      shapeOf(edges.map(({ edge }) => edge)),
      jointsOf(circuit).length > 0 ? 'joined' : '',
      edges.some((each) => runOf(country, each).some(({ rod }) => rod !== undefined)) ? 'earth' : '',
    ].join(' ')
  })
  return circuits.toSorted().join(' | ')
}
