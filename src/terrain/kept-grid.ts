import type { DatumShift } from '../geo/datum-shift'
import type { Position } from '../geo/position'

/** An elevation file that is at hand, and what it gives to the plan on the table. */
export interface KeptGrid {
  readonly key: string
  readonly name: string
  readonly sizeBytes: number
  /** Side of its cells on the ground, m; undefined while none of it is read. */
  readonly cellM: number | undefined
  /** Where its heights lie in another datum. */
  readonly shift?: DatumShift | undefined
  /** The middle of what is read of it. */
  readonly middle: Position | undefined
  /** `read`: it gives heights · `elsewhere`: no cell of it lies by the plan · `waiting`: for a plan to be read under · `broken` */
  readonly state: 'read' | 'elsewhere' | 'waiting' | 'broken'
  /** False for the demo's own ground, and for what the browser had no room to keep. */
  readonly isKept: boolean
}
