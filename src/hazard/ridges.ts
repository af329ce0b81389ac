import { degreeM } from '../geo/earth'
import { legGeometry } from '../geo/leg-length'
import { shortWayDeg } from '../geo/longitude'
import type { Position } from '../geo/position'
import type { Ground } from '../terrain/ground'

/** A stretch of a line on a ridge or a top. Distances on the map from the line's first station, m. */
export interface RidgeStretch {
  readonly startM: number
  readonly endM: number
  readonly position: readonly [lonDeg: number, latDeg: number]
  readonly legIndex: number
}

/** Places along a line that are looked at, m apart, and how far off the ground about them is. */
const EVERY_M = 100
const ABOUT_M = 250
/** The ground falls off to a side where it is so much lower there, m: a slope of 5 %. */
const FALL_M = 12.5
/** Of eight sides, on a ridge or a top the ground falls off to so many: a saddle has fewer, a slope no two opposite. */
const SIDES = 5

/** Stretches of a line that stand out over the ground on both sides, where lightning looks for it. Our own reckoning. */
export function ridgeStretches(ground: Ground, vertices: readonly Position[]): RidgeStretch[] {
  const found: { startM: number; endM: number; position: readonly [number, number]; legIndex: number }[] = []
  let open = false
  let startM = 0
  for (let legIndex = 0; legIndex + 1 < vertices.length; legIndex++) {
    const a = vertices[legIndex]!
    const b = vertices[legIndex + 1]!
    const lengthM = legGeometry(a, b).mapM
    const steps = Math.max(1, Math.ceil(lengthM / EVERY_M))
    for (let i = 0; i < steps; i++) {
      const t = (i + 0.5) / steps
      const position = [a[0] + shortWayDeg(b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t] as const
      if (!standsOut(ground, position)) {
        open = false
        continue
      }
      const endM = startM + (lengthM * (i + 1)) / steps
      if (open) found.at(-1)!.endM = endM
      else found.push({ startM: startM + (lengthM * i) / steps, endM, position, legIndex })
      open = true
    }
    startM += lengthM
  }
  return found
}

/** North, east and so on round, by parts of `ABOUT_M`. */
const ROUND = Array.from(
  { length: 8 },
  (_, k) => [Math.sin((k * Math.PI) / 4), Math.cos((k * Math.PI) / 4)] as const,
)

function standsOut(ground: Ground, [lonDeg, latDeg]: readonly [number, number]): boolean {
  const hereM = ground.heightM(lonDeg, latDeg)
  if (hereM === undefined) return false
  const { lonM, latM } = degreeM(latDeg)
  // One bit a side on which the ground falls off.
  let [falls, count] = [0, 0]
  for (const [k, [east, north]] of ROUND.entries()) {
    // So many sides are wanted that these can be too few already.
    if (count + ROUND.length - k < SIDES) return false
    const thereM = ground.heightM(lonDeg + (east * ABOUT_M) / lonM, latDeg + (north * ABOUT_M) / latM)
    if (thereM === undefined || !(hereM - thereM >= FALL_M)) continue
    falls |= 1 << k
    count++
  }
  return count >= SIDES && (falls & (falls >> 4)) !== 0
}
