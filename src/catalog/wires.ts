import type { Wire } from './wire'
import { COPPER_PAIRS } from './wires-copper'
import { FIELD_WIRES } from './wires-field'

/** The wires that the program knows of its own. */
export const WIRES: readonly Wire[] = [...FIELD_WIRES, ...COPPER_PAIRS]
