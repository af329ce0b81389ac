import type { LineId } from '../plan/id'
import type { Lay } from '../plan/plan'

/** One leg, measured. Lengths in m; bearing true, 0…360°, at the leg's start. */
export interface MeasuredLeg {
  readonly mapM: number
  readonly groundM: number
  /** False where the ground under the leg is not known, so that `groundM` is the map's length. */
  readonly onGrid: boolean
  readonly laidM: number
  readonly bearingDeg: number
  readonly lay: Lay
}

/** One line, measured: sums over its legs, and `wireM` = laid wire and two tails, its electrical length. */
export interface MeasuredLine {
  readonly id: LineId
  readonly mapM: number
  readonly groundM: number
  readonly laidM: number
  readonly wireM: number
  readonly legs: readonly MeasuredLeg[]
}
