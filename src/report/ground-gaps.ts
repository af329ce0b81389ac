import { shortWayDeg } from '../geo/longitude'
import type { Position } from '../geo/position'
import type { MeasuredLeg } from '../measure/measured'
import type { Ground } from '../terrain/ground'

/** A leg is asked at so many even steps where on it no height is known. */
const STEPS = 8

/** Neighbouring legs of a line that have the map's length, for the ground is not known under all of them. */
export interface GroundGap {
  readonly legIndex: number
  readonly legs: number
  /** Their length on the map, m. */
  readonly mapM: number
  /** The first place found on them where no height is known; else the first leg's middle. */
  readonly position: readonly [lonDeg: number, latDeg: number]
}

/** The longest gap in the ground under a line; undefined where all of it is known. */
export function groundGap(
  vertices: readonly Position[],
  legs: readonly MeasuredLeg[],
  ground: Ground,
): GroundGap | undefined {
  let longest: Omit<GroundGap, 'position'> | undefined
  for (let from = 0; from < legs.length; from++) {
    let [to, mapM] = [from, 0]
    while (legs[to]?.onGrid === false) mapM += legs[to++]!.mapM
    if (mapM > (longest?.mapM ?? 0)) longest = { legIndex: from, legs: to - from, mapM }
    from = to
  }
  return longest && { ...longest, position: unknownSpot(vertices, longest, ground) }
}

function unknownSpot(
  vertices: readonly Position[],
  { legIndex, legs }: Omit<GroundGap, 'position'>,
  ground: Ground,
): readonly [number, number] {
  const at = (leg: number, share: number) => {
    const [a, b] = [vertices[leg]!, vertices[leg + 1]!]
    return [a[0] + shortWayDeg(b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share] as const
  }
  for (let leg = legIndex; leg < legIndex + legs; leg++)
    for (let step = 0; step <= STEPS; step++) {
      const spot = at(leg, step / STEPS)
      if (ground.heightM(...spot) === undefined) return spot
    }
  return at(legIndex, 0.5)
}
