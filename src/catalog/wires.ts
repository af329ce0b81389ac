import type { Wire } from './wire'
import { FIELD_WIRES } from './wires-field'
import { JACKETED_PAIRS } from './wires-jacketed'
import { NETWORK_CABLES } from './wires-network'
import { PARALLEL_WIRES } from './wires-parallel'

/** The wires that the program knows of its own. */
export const WIRES: readonly Wire[] = [
  ...FIELD_WIRES,
  ...JACKETED_PAIRS,
  ...NETWORK_CABLES,
  ...PARALLEL_WIRES,
]
