import { DEFAULT_ALLOWANCES } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import type { RodKind } from './rod-kinds'
import { splitWay, type Way, wayBack } from './ways'
import type { WireKind } from './wire-kinds'

/** One stretch of a run: one wire from end to end, or two side by side, joined at both ends. */
export interface Part {
  /** Indices of kinds of wire: one, or two. */
  readonly kinds: readonly number[]
  readonly way: Way
  /** Index of the rods that stand at both ends of an earth return. */
  readonly rod?: number
}

/** One run of wire from one place to another: one line, or several, joined on the way. */
export type Run = readonly Part[]

/** Lines that a part is, one for each wire. */
export const strandsOf = ({ kinds, way, rod }: Part) => kinds.map((kind) => ({ kind, way, rod }))

/** One wire from end to end. */
export const isPlain = (run: Run): boolean => run.length === 1 && run[0]!.kinds.length === 1

/** The kinds of wire, and the rods, of which runs are made. */
export interface RunStuff {
  readonly wires: readonly WireKind[]
  readonly rods: readonly RodKind[]
  readonly ground: Ground | undefined
}

/**
 * Every run of wire that can be made along a way with what there is: one wire; two side by side; one conductor with earth rods; two
 * wires joined on the way; one wire with an odd end of another beside its first or last stretch.
 */
export function runsAlong(way: Way, stuff: RunStuff): readonly Run[] {
  const { wires } = stuff
  const reaching = wires.flatMap(({ reachM, by }, kind) =>
    by === 'pair' && reachM >= way.wireM ? [kind] : [],
  )
  const plain = reaching.map((kind): Run => [{ kinds: [kind], way }])
  const doubled = reaching.flatMap((one, i) =>
    reaching
      .slice(i)
      .filter((two) => canLieBeside(wires, one, two, 2 * way.wireM))
      .map((two): Run => [{ kinds: [one, two], way }]),
  )
  return [
    ...plain,
    ...doubled,
    ...earthed(way, stuff),
    ...joinedRuns(way, stuff),
    ...helped(way, reaching, stuff),
  ]
}

const JOINT_TAILS_M = 2 * DEFAULT_ALLOWANCES.tailM

/** Another way to use the same wire has no place beside it; the same wire must be there for both, m. */
const canLieBeside = (wires: readonly WireKind[], one: number, two: number, bothM: number): boolean =>
  one === two ? wires[one]!.reachM >= bothM : wires[one]!.pool !== wires[two]!.pool

/** One conductor, and the earth for the other: one rod at either end. */
const earthed = (way: Way, { wires, rods }: RunStuff): readonly Run[] =>
  wires.flatMap(({ by, reachM }, kind) =>
    by === 'earth' && reachM >= way.wireM
      ? rods.flatMap(({ count }, rod): Run[] => (count >= 2 ? [[{ kinds: [kind], way, rod }]] : []))
      : [],
  )

const turned = (run: Run): Run => run.map((part) => ({ ...part, way: wayBack(part.way) })).toReversed()

/** Lengths of one wire that are worth using up whole before another goes on: one spool of each length, and all that there is. */
const wholeLengthsM = ({ spools, reachM }: WireKind): readonly number[] =>
  [...new Set([...spools.map(({ lengthM }) => lengthM), reachM])].toSorted((a, b) => b - a)

/** Runs of two wires: one of them used up from either end, the other for the rest; and of three, where no two reach. */
function joinedRuns(way: Way, { wires, ground }: RunStuff): readonly Run[] {
  const found: Run[] = []
  for (const [kind, used] of wires.entries()) {
    if (used.by === 'earth') continue
    for (const lengthM of wholeLengthsM(used)) {
      if (lengthM >= way.wireM) continue
      for (const isBack of [false, true]) {
        const split = splitWay(isBack ? wayBack(way) : way, lengthM, ground)
        if (!split) continue
        const [near, far] = split
        for (const [other, rest] of wires.entries()) {
          if (rest.pool === used.pool || rest.by === 'earth' || rest.reachM < far.wireM) continue
          const run: Run = [
            { kinds: [kind], way: near },
            { kinds: [other], way: far },
          ]
          found.push(isBack ? turned(run) : run)
        }
      }
    }
  }
  return found.length > 0 ? found : chainedRuns(way, wires, ground)
}

/** Runs of several wires, each used up before the next goes on, the longest first. */
function chainedRuns(way: Way, wires: readonly WireKind[], ground: Ground | undefined): readonly Run[] {
  const order = [...wires.keys()]
    .filter((kind) => wires[kind]!.by === 'pair')
    .sort((a, b) => wires[b]!.reachM - wires[a]!.reachM)
  const run: Part[] = []
  const pools = new Set<number>()
  let left = way
  for (const kind of order) {
    const { reachM, pool } = wires[kind]!
    if (pools.has(pool)) continue
    if (reachM >= left.wireM) return run.length > 0 ? [[...run, { kinds: [kind], way: left }]] : []
    const split = splitWay(left, reachM, ground)
    if (!split) continue
    pools.add(pool)
    run.push({ kinds: [kind], way: split[0] })
    left = split[1]
  }
  return []
}

/** One wire for the whole way, with all of another beside it from either end that does not reach for all of it. */
function helped(way: Way, reaching: readonly number[], { wires, ground }: RunStuff): readonly Run[] {
  return reaching.flatMap((main) =>
    [...wires.entries()].flatMap(([odd, { by, reachM }]): Run[] => {
      // What joins the two stretches of the main wire takes two tails more.
      const oddM = odd === main ? reachM - way.wireM - JOINT_TAILS_M : reachM
      if (by === 'earth' || oddM <= 0 || oddM >= way.wireM) return []
      if (odd !== main && wires[odd]!.pool === wires[main]!.pool) return []
      return [false, true].flatMap((isBack): Run[] => {
        const split = splitWay(isBack ? wayBack(way) : way, oddM, ground)
        if (!split || split[0].wireM + split[1].wireM > wires[main]!.reachM) return []
        const run: Run = [
          { kinds: [main, odd], way: split[0] },
          { kinds: [main], way: split[1] },
        ]
        return [isBack ? turned(run) : run]
      })
    }),
  )
}
