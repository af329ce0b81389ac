import { pointOnLeg } from '../geo/leg-length'
import { type Line, type Plan, verticesOf } from '../plan/plan'
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

/** The leg in which a running length falls, and how far into it as a fraction 0…1; the ends of the line hold what lies beyond. */
function legAt(
  measured: MeasuredLine,
  reading: Reading,
  runM: number,
): { readonly legIndex: number; readonly fraction: number } {
  let beforeM = 0
  for (const [legIndex, leg] of measured.legs.entries()) {
    const lengthM = leg[reading]
    if (runM <= beforeM + lengthM || legIndex === measured.legs.length - 1) {
      const fraction = lengthM > 0 ? (runM - beforeM) / lengthM : 0
      return { legIndex, fraction: Math.min(1, Math.max(0, fraction)) }
    }
    beforeM += lengthM
  }
  throw new Error(`line ${measured.id} has no legs`)
}

function runTo(measured: MeasuredLine, reading: Reading, legIndex: number, fraction: number): number {
  let runM = 0
  for (let i = 0; i < legIndex; i++) runM += measured.legs[i]![reading]
  return runM + measured.legs[legIndex]![reading] * fraction
}

function placeAt(
  plan: Plan,
  measured: MeasuredLine,
  line: Line,
  legIndex: number,
  fraction: number,
): PlaceOnLine {
  const vertices = verticesOf(plan, line)
  return {
    position: pointOnLeg(vertices[legIndex]!, vertices[legIndex + 1]!, fraction),
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
  const { legIndex, fraction } = legAt(measured, 'laidM', wireM - tailM(measured))
  return placeAt(plan, measured, line, legIndex, fraction)
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
