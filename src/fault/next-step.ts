import type { CircuitModel } from '../budget/circuit-model'
import { shortestWay } from '../budget/path'
import type { FaultElement } from '../field/fault-ports'
import { STEP_NEPERS } from '../field/gauge'
import type { Far, What } from '../field/probe'
import { type Evidence, isReading, type LineReading, type MeterReading } from './evidence'
import type { LikelyStretch } from './likely-stretches'
import { type Bench, type Manner, meterObservation } from './observation'
import type { Particle } from './particles'

/** A place of a circuit: a station, or so much wire from a line's `from`. */
export type Place = string | { readonly line: string; readonly wireM: number }

/** What to do next: a measurement, or to walk a stretch and look. */
export interface NextStep {
  readonly at: Place
  /** What to measure, as evidence that only lacks its value; null: walk from here to `until` and look. */
  readonly take: { readonly what: What; readonly far: Far; readonly toward: string } | null
  readonly until: { readonly line: string; readonly wireM: number } | null
  /** Wire to walk along to get there, m. */
  readonly walkM: number
  /** The part of the stretch in question that it leaves. */
  readonly leaves: number
}

/** Opening a line, clipping on, reading: as much trouble as so many metres of walking. Allowance. */
const TROUBLE_M = 40
/** What is still in question has to be narrowed down further: by this part of its length of walking. Allowance. */
const NARROWING = 0.25
/** Looking at each metre is slower than walking along: by this part. Allowance. */
const LOOKING_SLOWLY = 0.15
const LISTED = 5
const USUAL_PCT = 1

/** How far it is along the wire from one place to another, m. */
type Apart = (from: Place, to: Place) => number

function apartIn(model: CircuitModel): Apart {
  const known = new Map<number, number>()
  const between = (a: number, b: number): number => {
    const key = Math.min(a, b) * model.stations.length + Math.max(a, b)
    const before = known.get(key)
    if (before !== undefined) return before
    const way = shortestWay(model, a, b)
    const found = way ? way.reduce((sum, { wireM }) => sum + wireM, 0) : Number.POSITIVE_INFINITY
    known.set(key, found)
    return found
  }
  return (from, to) => {
    if (typeof from !== 'string' && typeof to !== 'string' && from.line === to.line)
      return Math.abs(from.wireM - to.wireM)
    const ends = endsOf(model, to)
    return Math.min(
      ...endsOf(model, from).flatMap((start) =>
        ends.map((end) => start.offM + end.offM + between(start.node, end.node)),
      ),
    )
  }
}

function endsOf(
  model: CircuitModel,
  place: Place,
): readonly { readonly node: number; readonly offM: number }[] {
  if (typeof place === 'string') return [{ node: model.stations.indexOf(place), offM: 0 }]
  const line = model.lines.find(({ id, wireM }) => id === place.line && wireM > 0)!
  return [
    { node: line.from, offM: place.wireM },
    { node: line.to, offM: Math.max(0, line.wireM - place.wireM) },
  ]
}

/** Where the crew stands: at the last thing that was measured, else at the first telephone. */
function standsAt({ model }: Bench, evidence: readonly Evidence[]): Place {
  const last = evidence.findLast((each) => isReading(each) || 'murray' in each || 'varley' in each)
  if (last && 'line' in last) return { line: last.line, wireM: last.wireM }
  if (last && 'at' in last) return last.at
  const first = model.sets[0]?.node ?? model.lines[0]!.from
  return model.stations[first]!
}

/** What is worth reading where such a fault is likely. */
const WORTH: Readonly<Record<Exclude<FaultElement, 'none'>, readonly { what: What; far: Far }[]>> = {
  across: [{ what: 'loopOhms', far: 'open' }],
  along: [{ what: 'loopOhms', far: 'short' }],
  broken: [{ what: 'nanoF', far: 'open' }],
}

/** A reading less likely than this part is not what the next one is chosen for. */
const LEAST_WORTH = 0.1

/**
 * What to do next, the best first: the least walking, to the place and then along what is still in question. What a measurement would leave
 * is told from faults that are drawn as likely as they are: each is taken in turn for the true one, and the others weighed by how well they
 * would explain its reading.
 *
 * @param tags places on the lines where the pair can be opened
 */
export function nextSteps(
  bench: Bench,
  evidence: readonly Evidence[],
  particles: readonly Particle[],
  tags: readonly { readonly line: string; readonly wireM: number }[],
  places: readonly LikelyStretch[],
): readonly NextStep[] {
  if (particles.length < 2) return []
  const from = standsAt(bench, evidence)
  const manner = commonest(particles)
  const before = spreadOf(particles, null)
  const apart = apartIn(bench.model)
  // From a place on to the fault itself: that has to be walked in any case.
  const aheadM = (at: Place) =>
    particles.reduce((sum, each) => sum + apart(at, { line: each.line, wireM: each.wireM }), 0) /
    particles.length
  const readings = evidence.filter(isReading)
  const taken = readings.at(-1)
  const meterPct = taken?.meterPct ?? USUAL_PCT
  const steps: (NextStep & { readonly costM: number })[] = []
  const worth = (Object.keys(WORTH) as (keyof typeof WORTH)[])
    .filter((element) => {
      const share = particles.filter(
        (each) => each.hypothesis.element === element && !each.hypothesis.toEarth,
      )
      return share.length >= LEAST_WORTH * particles.length
    })
    .flatMap((element) => WORTH[element])
  const conditions = {
    ...(taken?.tempC !== undefined && { tempC: taken.tempC }),
    ...(taken?.weather !== undefined && { weather: taken.weather }),
  }
  for (const { at, toward } of candidatesOf(bench, tags, places)) {
    const walkM = apart(from, at)
    const onwardM = aheadM(at)
    for (const { what, far } of worth) {
      const place =
        typeof at === 'string' ? { at, toward } : { ...at, toward: toward as LineReading['toward'] }
      const reading = { ...place, what, far, value: 1, meterPct, ...conditions } as MeterReading
      if (readings.some((each) => isSame(each, reading))) continue
      const expected = expectedOf(bench, reading, manner, particles)
      if (!expected) continue
      const after = leftAfter(particles, expected)
      const leaves = Math.min(1, after / before)
      steps.push({
        at,
        take: { what, far, toward },
        until: null,
        walkM,
        leaves,
        costM: walkM + TROUBLE_M + onwardM + NARROWING * after,
      })
    }
  }
  const look = lookAt(from, places, particles, apart)
  if (look) steps.push(look)
  return steps
    .sort((a, b) => a.costM - b.costM)
    .slice(0, LISTED)
    .map(({ costM: _, ...step }) => step)
}

const isSame = (a: MeterReading, b: MeterReading): boolean =>
  a.what === b.what &&
  a.far === b.far &&
  a.toward === b.toward &&
  ('line' in a
    ? 'line' in b && a.line === b.line && Math.abs(a.wireM - b.wireM) < 1
    : 'at' in b && a.at === b.at)

/** The way in which most of the faults that are likely take the evidence. */
const commonest = (particles: readonly Particle[]): Manner => {
  const counts = new Map<Manner, number>()
  for (const { manner } of particles) counts.set(manner, (counts.get(manner) ?? 0) + 1)
  return [...counts].sort((a, b) => b[1] - a[1])[0]![0]
}

/** Ends of the circuit and its joints, and the tags nearest to what is in question. */
function candidatesOf(
  { model }: Bench,
  tags: readonly { readonly line: string; readonly wireM: number }[],
  places: readonly LikelyStretch[],
): readonly { readonly at: Place; readonly toward: string }[] {
  const stations = model.stations.flatMap((at, node) => {
    const around = model.lines.filter(({ from, to, wireM }) => wireM > 0 && (from === node || to === node))
    return around.map((line) => ({ at, toward: model.stations[line.from === node ? line.to : line.from]! }))
  })
  const near = places.slice(0, 3).flatMap(({ line, fromM, toM }) => {
    const own = tags.filter((tag) => tag.line === line).sort((a, b) => a.wireM - b.wireM)
    const inside = own.filter(({ wireM }) => wireM > fromM && wireM < toM)
    const before = own.filter(({ wireM }) => wireM <= fromM).slice(-2)
    const after = own.filter(({ wireM }) => wireM >= toM).slice(0, 2)
    const every = Math.max(1, Math.ceil(inside.length / 6))
    return [...before, ...inside.filter((_, k) => k % every === 0), ...after]
  })
  const onLines = [...new Set(near)].flatMap((tag) =>
    (['from', 'to'] as const).map((toward) => ({ at: { line: tag.line, wireM: tag.wireM }, toward })),
  )
  return [...stations.slice(0, 24), ...onLines]
}

/** What the reading would be under each fault, nepers, and how far off it may be. */
function expectedOf(
  bench: Bench,
  reading: MeterReading,
  manner: Manner,
  particles: readonly Particle[],
): { readonly nepers: Float64Array; readonly sigma: number } | null {
  const observation = meterObservation(bench, { ...reading, value: 100 }, manner)
  if (!observation) return null
  const nepers = Float64Array.from(particles, ({ line, wireM, hypothesis, ohms, nepers: more }) => {
    const values = observation.at(line, wireM, wireM).all(hypothesis, ohms)
    return more.reduce(
      (sum, each, f) => sum + ((values[f + 1]! - values[0]!) / STEP_NEPERS) * each,
      values[0]!,
    )
  })
  return { nepers, sigma: observation.sigma }
}

/** What would still be in question after a reading, m, on the average over the faults that could be the true one. */
function leftAfter(
  particles: readonly Particle[],
  { nepers, sigma }: { readonly nepers: Float64Array; readonly sigma: number },
): number {
  let sum = 0
  const weights = new Float64Array(particles.length)
  // Both the true reading's error and the model's: twice the square.
  const twice = 4 * sigma * sigma + 1e-9
  for (let truth = 0; truth < particles.length; truth++) {
    let total = 0
    for (let k = 0; k < particles.length; k++) {
      weights[k] = Math.exp(-((nepers[k]! - nepers[truth]!) ** 2) / twice)
      total += weights[k]!
    }
    for (let k = 0; k < particles.length; k++) weights[k]! /= total
    sum += spreadOf(particles, weights)
  }
  return sum / particles.length
}

/** How far apart weighed faults lie, m: on each line √12 standard deviations, which of an even stretch is its length, and all lines together. */
function spreadOf(particles: readonly Particle[], weights: Float64Array | null): number {
  const lines = new Map<string, { w: number; x: number; xx: number }>()
  for (const [k, { line, wireM }] of particles.entries()) {
    const w = weights ? weights[k]! : 1 / particles.length
    const own = lines.get(line) ?? { w: 0, x: 0, xx: 0 }
    own.w += w
    own.x += w * wireM
    own.xx += w * wireM * wireM
    lines.set(line, own)
  }
  let [length, entropy] = [0, 0]
  for (const { w, x, xx } of lines.values()) {
    if (w < 1e-9) continue
    const variance = Math.max(0, xx / w - (x / w) ** 2)
    length += w * Math.sqrt(12 * variance)
    entropy -= w * Math.log(w)
  }
  return Math.max(1, length * Math.exp(entropy))
}

/** To walk along the likeliest stretch and look. */
function lookAt(
  from: Place,
  places: readonly LikelyStretch[],
  particles: readonly Particle[],
  apart: Apart,
): (NextStep & { readonly costM: number }) | null {
  const [stretch] = places
  if (!stretch) return null
  const ends = [stretch.fromM, stretch.toM].map((wireM) => ({ line: stretch.line, wireM }))
  const [near, far] = ends.toSorted((a, b) => apart(from, a) - apart(from, b))
  const walkM = apart(from, near!)
  const longM = stretch.toM - stretch.fromM
  // Whoever does not find it there has walked all of it, and goes on from its end.
  const onwardM = particles.reduce((sum, { line, wireM }) => {
    const isThere = line === stretch.line && wireM >= stretch.fromM && wireM <= stretch.toM
    return sum + (isThere ? apart(near!, { line, wireM }) : 2 * longM + apart(far!, { line, wireM }))
  }, 0)
  return {
    at: near!,
    take: null,
    until: far!,
    walkM,
    leaves: 1 - stretch.chance,
    costM: walkM + onwardM / particles.length + LOOKING_SLOWLY * longM,
  }
}
