import type { Known } from './evidence'
import type { LikelyStretch } from './likely-stretches'
import type { Bench } from './observation'
import type { Particle } from './particles'
import { type Apart, apartIn, type Place, type PlaceOnLine, standsAt } from './walking'
import { type Prospect, stopsOf, type Take } from './worth-reading'

/** What to do next: a measurement, or to walk a stretch and look. */
export interface NextStep {
  readonly at: Place
  /** Null: walk from here to `until` and look. */
  readonly take: Take | null
  readonly until: PlaceOnLine | null
  /** Wire to walk along to get there, m. */
  readonly walkM: number
  /** The part of the stretch in question that it leaves. */
  readonly leaves: number
}

interface Priced extends NextStep {
  readonly costM: number
}

/** Opening a line and clipping on, and each reading there: as much trouble as so many metres of walking. Allowances. */
const OPENING_M = 30
const READING_M = 10
/** What leaves more than this of the stretch in question is not worth its trouble. */
const WORTHLESS = 0.95
/** Of the detours that what is in question could cause, further readings on the way spare all but this part. Allowance. */
const UNSPARED = 0.4
/** Looking at each metre takes as long again as walking along it, and nobody looks along more than this at a time, m. Allowances. */
const LOOKING_SLOWLY = 1
const LOOKED_M = 600
const LISTED = 5

/**
 * What to do next, the best first: the least walking until the fault is found, the walk to the fault itself with it. What a measurement
 * would leave is told from faults that are drawn as likely as they are: each is taken in turn for the true one, and the others weighed
 * by how well they would explain what is then read. At one place several readings may be worth more together than each alone.
 *
 * @param tags places on the lines where the pair can be opened
 */
export function nextSteps(
  bench: Bench,
  evidence: readonly Known[],
  all: readonly Particle[],
  tags: readonly PlaceOnLine[],
  places: readonly LikelyStretch[],
): readonly NextStep[] {
  if (all.length < 2) return []
  const particles = fewer(all)
  const apart = apartIn(bench.model)
  const from = standsAt(bench, evidence, apart)
  const field = fieldOf(particles, apart)
  const lay = layOf(particles)
  const before = spreadOf(lay, null)
  const steps: Priced[] = []
  for (const { at, prospects } of stopsOf(bench, evidence, particles, tags, places, (at) =>
    apart(from, at),
  )) {
    if (prospects.length === 0) continue
    const walkM = apart(from, at)
    const fromHere = field.from(at)
    const known = prospects.map((each) => {
      const weights = weighed(each)
      return { take: each.take, weights, leaves: Math.min(1, leftAfter(lay, weights) / before) }
    })
    for (const set of setsOf(known)) {
      const { take, leaves } = set.toSorted((a, b) => a.leaves - b.leaves)[0]!
      const weights = together(set.map((each) => each.weights))
      const left = set.length > 1 ? leftAfter(lay, weights) / before : leaves
      // A reading that tells next to nothing, or no more than the best of the others alone, is nobody's next step.
      if (left > WORTHLESS || (set.length > 1 && left > WORTHLESS * leaves)) continue
      const onM = fromHere.onwardM(weights)
      const costM = walkM + OPENING_M + READING_M * set.length + onM
      steps.push({ at, take, until: null, walkM, leaves, costM })
    }
  }
  for (const stretch of places.slice(0, 3)) {
    const look = lookAlong(from, stretch, particles, apart, field)
    if (look) steps.push(look)
  }
  const sorted = steps.sort((a, b) => a.costM - b.costM)
  const key = ({ at, take }: NextStep) => JSON.stringify([at, take])
  return sorted
    .filter((step, k) => sorted.findIndex((each) => key(each) === key(step)) === k)
    .slice(0, LISTED)
    .map(({ costM: _, ...step }) => step)
}

/** Faults strewn over more lines than this are thinned out: where so much is open yet, a third of them tells as well what to read first. */
const STREWN = 30

const fewer = (all: readonly Particle[]): readonly Particle[] =>
  new Set(all.map(({ line }) => line)).size > STREWN ? all.filter((_, k) => k % 3 === 0) : all

/** Each reading alone, all of one direction, and all of a place. */
function setsOf<T extends { readonly take: Take }>(all: readonly T[]): readonly (readonly T[])[] {
  const towards = [...new Set(all.map(({ take }) => take.toward))]
  const sets = [
    ...all.map((each) => [each]),
    ...towards.map((toward) => all.filter(({ take }) => take.toward === toward)),
    ...(towards.length > 1 ? [all] : []),
  ]
  return sets.filter((set, k) => set.length > 1 || k < all.length)
}

/** How well each fault would explain what is read with another as the true one: a row for each true one. */
type Weights = readonly Float64Array[]

function weighed({ nepers, sigma }: Prospect): Weights {
  const count = nepers.length
  // Both the true reading's error and the model's: twice the square.
  const twice = 4 * sigma * sigma + 1e-9
  const rows = Array.from({ length: count }, () => new Float64Array(count))
  for (let a = 0; a < count; a++) {
    for (let b = 0; b <= a; b++) {
      const weight = Math.exp(-((nepers[a]! - nepers[b]!) ** 2) / twice)
      rows[a]![b] = weight
      rows[b]![a] = weight
    }
  }
  return rows
}

/** The same of several readings together. */
const together = ([first, ...rest]: readonly Weights[]): Weights =>
  rest.length === 0
    ? first!
    : first!.map((row, truth) =>
        row.map((each, k) => rest.reduce((own, other) => own * other[truth]![k]!, each)),
      )

/** Likely faults as places to walk to. */
function fieldOf(particles: readonly Particle[], apart: Apart) {
  const places = particles.map(({ line, wireM }) => ({ line, wireM }))
  const all = [...particles.keys()]
  const between = places.map((a) => Float64Array.from(places, (b) => apart(a, b)))
  return {
    from: (at: Place) => {
      const out = Float64Array.from(places, (place) => apart(at, place))
      return {
        /**
         * Walking on to the fault, m, on the average over the faults that could be the true one: there straight, and a part of the detour
         * of whoever goes first to where one of the others would be.
         */
        onwardM: (weights: Weights, truths: readonly number[] = all): number => {
          let sum = 0
          for (const truth of truths) {
            const own = weights[truth]!
            let [whole, roundM] = [0, 0]
            for (let k = 0; k < own.length; k++) {
              whole += own[k]!
              roundM += own[k]! * (out[k]! + between[k]![truth]!)
            }
            roundM /= whole
            sum += out[truth]! + UNSPARED * (roundM - out[truth]!)
          }
          return sum / Math.max(1, truths.length)
        },
      }
    },
  }
}

/** On which line and how far out each likely fault lies, by the number of its line. */
interface Lay {
  readonly line: readonly number[]
  readonly wireM: readonly number[]
  readonly count: number
}

function layOf(particles: readonly Particle[]): Lay {
  const lines = [...new Set(particles.map(({ line }) => line))]
  return {
    line: particles.map(({ line }) => lines.indexOf(line)),
    wireM: particles.map(({ wireM }) => wireM),
    count: lines.length,
  }
}

/** What would still be in question after a reading, m, on the average over the faults that could be the true one. */
const leftAfter = (lay: Lay, weights: Weights): number =>
  weights.reduce((sum, own) => sum + spreadOf(lay, own), 0) / weights.length

/** How far apart weighed faults lie, m: on each line √12 standard deviations, which of an even stretch is its length, and all lines together. */
function spreadOf({ line, count, wireM }: Lay, weights: Float64Array | null): number {
  const [w, x, xx] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)]
  let whole = 0
  for (let k = 0; k < line.length; k++) {
    const [own, m] = [weights ? weights[k]! : 1, wireM[k]!]
    const at = line[k]!
    whole += own
    w[at]! += own
    x[at]! += own * m
    xx[at]! += own * m * m
  }
  let [length, entropy] = [0, 0]
  for (let at = 0; at < count; at++) {
    const part = w[at]! / whole
    if (part < 1e-9) continue
    const variance = Math.max(0, xx[at]! / w[at]! - (x[at]! / w[at]!) ** 2)
    length += part * Math.sqrt(12 * variance)
    entropy -= part * Math.log(part)
  }
  return Math.max(1, length * Math.exp(entropy))
}

/** To walk along a likely stretch and look, from its nearer end on. */
function lookAlong(
  from: Place,
  { line, fromM, toM }: LikelyStretch,
  particles: readonly Particle[],
  apart: Apart,
  field: ReturnType<typeof fieldOf>,
): Priced | null {
  const ends = [fromM, toM].map((wireM) => ({ line, wireM }))
  const [near, far] = ends.toSorted((a, b) => apart(from, a) - apart(from, b)) as [PlaceOnLine, PlaceOnLine]
  const longM = Math.min(toM - fromM, LOOKED_M)
  const until = { line, wireM: near.wireM + Math.sign(far.wireM - near.wireM) * longM }
  const [lowM, highM] = [Math.min(near.wireM, until.wireM), Math.max(near.wireM, until.wireM)]
  const isThere = (each: Particle) => each.line === line && each.wireM >= lowM && each.wireM <= highM
  const missed = [...particles.keys()].filter((k) => !isThere(particles[k]!))
  const lookedM = particles.reduce(
    (sum, each) => sum + (isThere(each) ? Math.abs(each.wireM - near.wireM) : longM),
    0,
  )
  // Whoever does not find it goes on from the end of what was looked along, and knows so much more.
  const others = Float64Array.from(particles, (each) => (isThere(each) ? 0 : 1))
  const onM = field.from(until).onwardM(
    particles.map(() => others),
    missed,
  )
  const costM = apart(from, near) + ((1 + LOOKING_SLOWLY) * lookedM + missed.length * onM) / particles.length
  return {
    at: near,
    take: null,
    until,
    walkM: apart(from, near),
    leaves: missed.length / particles.length,
    costM,
  }
}
