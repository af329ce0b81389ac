import { legGeometry } from '../geo/leg-length'
import { shortWayDeg } from '../geo/longitude'
import type { GridGround } from './ground-from-grids'

type LonLat = readonly [lonDeg: number, latDeg: number, elevationM?: number]

/** One point of a profile. */
export interface ProfileSample {
  /** Along the map from the first vertex, m. */
  readonly distanceM: number
  readonly legIndex: number
  readonly position: readonly [lonDeg: number, latDeg: number]
  /** Undefined where the ground is not known. */
  readonly heightM: number | undefined
}

/** How a leg climbs, from its start; undefined where any of it is not known. */
export interface LegSlope {
  readonly startM: number
  readonly endM: number
  /** Rise from end to end over the run, %. */
  readonly meanPct: number | undefined
  /** Steepest stretch of 30 m or more, % up (+) or down (−). */
  readonly steepestPct: number | undefined
}

export interface Profile {
  readonly samples: readonly ProfileSample[]
  readonly legs: readonly LegSlope[]
  /** Sums of all that goes up and of all that goes down, m; swings smaller than the grid can tell are left out. */
  readonly climbM: number
  readonly descentM: number
  readonly lowestM: number | undefined
  readonly highestM: number | undefined
}

/** Slopes are taken over this run at least, m: over less, a metre's rounding looks like a bank. */
const SLOPE_RUN_M = 30
/** Swings up to this are the grid's noise, m. Common practice. */
const SWING_M = 2
/** A leg with a stretch this steep is hard going on foot and shut to wheels, %. From memory: FM 5-33, Terrain Analysis (1990). */
export const STEEP_PCT = 30

export const isSteep = (leg: LegSlope): boolean => Math.abs(leg.steepestPct ?? 0) >= STEEP_PCT

/**
 * The ground under a line, leg by leg, sampled at the step of the grid under each.
 *
 * @param mapM the legs' lengths on the map where they are already measured, m
 */
export function profileAlong(
  ground: GridGround,
  vertices: readonly LonLat[],
  mapM?: readonly number[],
): Profile {
  const samples: ProfileSample[] = []
  const legs: LegSlope[] = []
  let startM = 0
  for (let legIndex = 0; legIndex + 1 < vertices.length; legIndex++) {
    const from = vertices[legIndex]!
    const to = vertices[legIndex + 1]!
    const lengthM = mapM?.[legIndex] ?? legGeometry(from, to).mapM
    const heightsM = ground.heightsAlongM(from, to, lengthM)
    const intervals = heightsM.length - 1
    const dLon = shortWayDeg(to[0] - from[0])
    heightsM.forEach((heightM, i) => {
      if (i === 0 && legIndex > 0) return
      const t = i / intervals
      samples.push({
        distanceM: startM + lengthM * t,
        legIndex,
        position: [from[0] + dLon * t, from[1] + (to[1] - from[1]) * t],
        heightM: Number.isNaN(heightM) ? undefined : heightM,
      })
    })
    legs.push({ startM, endM: startM + lengthM, ...slopesOf(heightsM, lengthM) })
    startM += lengthM
  }
  const known = samples.flatMap(({ heightM }) => heightM ?? [])
  return {
    samples,
    legs,
    ...climbOf(known),
    lowestM: known.length > 0 ? known.reduce((a, b) => Math.min(a, b)) : undefined,
    highestM: known.length > 0 ? known.reduce((a, b) => Math.max(a, b)) : undefined,
  }
}

function slopesOf(heightsM: Float64Array, lengthM: number): Pick<LegSlope, 'meanPct' | 'steepestPct'> {
  if (!(lengthM > 0) || heightsM.some(Number.isNaN)) return { meanPct: undefined, steepestPct: undefined }
  const last = heightsM.length - 1
  const apart = Math.min(last, Math.ceil((SLOPE_RUN_M * last) / lengthM))
  const runM = (lengthM * apart) / last
  let steepest = 0
  for (let i = apart; i <= last; i++) {
    const slope = (heightsM[i]! - heightsM[i - apart]!) / runM
    if (Math.abs(slope) > Math.abs(steepest)) steepest = slope
  }
  return { meanPct: ((heightsM[last]! - heightsM[0]!) / lengthM) * 100, steepestPct: steepest * 100 }
}

/** Climb and descent between turning points that stand out by more than the noise. */
function climbOf(heightsM: readonly number[]): { climbM: number; descentM: number } {
  let [climbM, descentM] = [0, 0]
  if (heightsM.length === 0) return { climbM, descentM }
  let anchorM = heightsM[0]!
  let extremeM = anchorM
  let direction = 0
  const book = (toM: number) => {
    if (toM > anchorM) climbM += toM - anchorM
    else descentM += anchorM - toM
    anchorM = toM
  }
  for (const heightM of heightsM) {
    if (direction === 0) {
      if (Math.abs(heightM - anchorM) > SWING_M) direction = Math.sign(heightM - anchorM)
      extremeM = heightM
    } else if ((heightM - extremeM) * direction >= 0) extremeM = heightM
    else if ((extremeM - heightM) * direction > SWING_M) {
      book(extremeM)
      direction = -direction
      extremeM = heightM
    }
  }
  if (direction !== 0) book(extremeM)
  // What is left is small, but climb less descent stays what the ends differ by.
  book(heightsM.at(-1)!)
  return { climbM, descentM }
}
