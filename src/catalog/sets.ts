import { COMMON_SETS } from './sets-common'
import { ELECTRONIC_SETS } from './sets-electronic'
import { LOCAL_SETS } from './sets-local'
import type { TelephoneSet } from './telephone-set'

/** The sets that the program knows of its own. */
export const SETS: readonly TelephoneSet[] = [...LOCAL_SETS, ...COMMON_SETS, ...ELECTRONIC_SETS]
