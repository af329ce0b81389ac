import { SUPPLY } from './supply'
import { SET } from './telephone-set'
import { WIRE } from './wire'

/** The schema of each list of entries. */
export const ENTRY_SCHEMAS = { wires: WIRE, sets: SET, supplies: SUPPLY } as const
