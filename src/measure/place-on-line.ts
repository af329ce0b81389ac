import { pointOnLeg } from '../geo/leg-length'
import { memoryOfEach } from '../memo'
import { type Lay, type Line, type Plan, vertexOf } from '../plan/plan'
import type { MeasuredLine } from './measured'

/** A place on a line. */
export interface PlaceOnLine {
  /** Longitude and latitude, degrees. */
  readonly position: readonly [lonDeg: number, latDeg: number]
  readonly legIndex: number
  /** Running distance along the ground from the line's `from`, m. */
  readonly groundM: number
}

/** Wire left at each end of a measured line, m. */
const tailM = (measured: MeasuredLine): number => (measured.wireM - measured.laidM) / 2

/** Which of a leg's lengths is run along. */
type Reading = 'laidM' | 'groundM' | 'mapM'

const remembered = memoryOfEach<MeasuredLine, Readonly<Record<Reading, Float64Array>>>()

/** Running length at the start of each leg and at the end of the last, m. */
const runsOf = (measured: MeasuredLine) =>
  remembered(measured, [], () => {
    const sums = (reading: Reading) => {
      const runM = new Float64Array(measured.legs.length + 1)
      for (const [i, leg] of measured.legs.entries()) runM[i + 1] = runM[i]! + leg[reading]
      return runM
    }
    return { laidM: sums('laidM'), groundM: sums('groundM'), mapM: sums('mapM') }
  })

/** The leg in which a running length falls, and how far into it as a fraction 0…1; the ends of the line hold what lies beyond. */
function legAt(
  measured: MeasuredLine,
  reading: Reading,
  runM: number,
): { readonly legIndex: number; readonly fraction: number } {
  const last = measured.legs.length - 1
  if (last < 0) throw new Error(`line ${measured.id} has no legs`)
  const runs = runsOf(measured)[reading]
  let legIndex = 0
  for (let past = last; legIndex < past; ) {
    const middle = (legIndex + past) >> 1
    if (runM <= runs[middle + 1]!) past = middle
    else legIndex = middle + 1
  }
  const lengthM = measured.legs[legIndex]![reading]
  const fraction = lengthM > 0 ? (runM - runs[legIndex]!) / lengthM : 0
  return { legIndex, fraction: Math.min(1, Math.max(0, fraction)) }
}

/** The leg on which a length of wire from the `from` end comes to lie: the first tail lies at the station. */
const legAtWireM = (measured: MeasuredLine, wireM: number) =>
  legAt(measured, 'laidM', wireM - tailM(measured))

const runTo = (measured: MeasuredLine, reading: Reading, legIndex: number, fraction: number): number =>
  runsOf(measured)[reading][legIndex]! + measured.legs[legIndex]![reading] * fraction

function placeAt(
  plan: Plan,
  measured: MeasuredLine,
  line: Line,
  legIndex: number,
  fraction: number,
): PlaceOnLine {
  return {
    position: pointOnLeg(vertexOf(plan, line, legIndex), vertexOf(plan, line, legIndex + 1), fraction),
    legIndex,
    groundM: runTo(measured, 'groundM', legIndex, fraction),
  }
}

/**
 * Where on the ground a given length of wire from the line's `from` end comes to lie.
 *
 * The first tail lies at `from`, the last at `to`; between them the slack of a leg is spread evenly over it.
 */
export function pointAtWireM(plan: Plan, measured: MeasuredLine, line: Line, wireM: number): PlaceOnLine {
  const { legIndex, fraction } = legAtWireM(measured, wireM)
  return placeAt(plan, measured, line, legIndex, fraction)
}

/** The way of a stretch of wire over the ground: where it begins, the bends that it passes, where it ends. */
export function wayOfWire(
  plan: Plan,
  measured: MeasuredLine,
  line: Line,
  { fromM, toM }: { readonly fromM: number; readonly toM: number },
): readonly (readonly [lonDeg: number, latDeg: number])[] {
  const [start, end] = [fromM, toM].map((wireM) => pointAtWireM(plan, measured, line, wireM))
  const bends = line.bends.slice(start!.legIndex, end!.legIndex)
  return [start!.position, ...bends.map(([lonDeg, latDeg]) => [lonDeg, latDeg] as const), end!.position]
}

/** The place at a running distance along the ground from the line's `from`, m. */
export function pointAtGroundM(plan: Plan, measured: MeasuredLine, line: Line, groundM: number): PlaceOnLine {
  const { legIndex, fraction } = legAt(measured, 'groundM', groundM)
  return placeAt(plan, measured, line, legIndex, fraction)
}

/** The place at a distance on the map from the line's `from`, m: how the terrain gives a crossing. */
export function pointAtMapM(plan: Plan, measured: MeasuredLine, line: Line, mapM: number): PlaceOnLine {
  const { legIndex, fraction } = legAt(measured, 'mapM', mapM)
  return placeAt(plan, measured, line, legIndex, fraction)
}

/** Wire from the `from` end to a running distance along the ground, m, the first tail included: the inverse of `pointAtWireM`. */
export function wireMAtGroundM(measured: MeasuredLine, groundM: number): number {
  const { legIndex, fraction } = legAt(measured, 'groundM', groundM)
  return wireMOnLeg(measured, legIndex, fraction)
}

/** Wire from the `from` end to a place on one leg, m, the first tail included; `fraction` 0…1 of the way along the leg. */
export const wireMOnLeg = (measured: MeasuredLine, legIndex: number, fraction: number): number =>
  tailM(measured) + runTo(measured, 'laidM', legIndex, fraction)

/** How the line lies where a length of wire ends; undefined at the very ends of its legs, where a hand reaches it. */
export function layAtWireM(measured: MeasuredLine, wireM: number): Lay | undefined {
  const { legIndex, fraction } = legAtWireM(measured, wireM)
  return fraction > 0 && fraction < 1 ? measured.legs[legIndex]?.lay : undefined
}
