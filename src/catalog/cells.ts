import type { Cell } from './cell'
import { ALKALINE_9_VOLT, ALKALINE_AA, ALKALINE_C, ALKALINE_D, LANTERN_6_VOLT } from './cells-alkaline'
import { LEAD_ACID_12_VOLT, LITHIUM_ION } from './cells-rechargeable'

/** The cells that the program knows of its own. */
export const CELLS: readonly Cell[] = [
  ALKALINE_9_VOLT,
  ALKALINE_D,
  ALKALINE_C,
  ALKALINE_AA,
  LANTERN_6_VOLT,
  LEAD_ACID_12_VOLT,
  LITHIUM_ION,
]
