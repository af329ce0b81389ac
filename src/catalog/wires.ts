import type { Wire } from './wire'
import { FIELD_WIRES } from './wires-field'
import { JACKETED_PAIRS } from './wires-jacketed'
import { PARALLEL_WIRES } from './wires-parallel'

/** The wires that the program knows of its own. */
export const WIRES: readonly Wire[] = [...FIELD_WIRES, ...JACKETED_PAIRS, ...PARALLEL_WIRES]
