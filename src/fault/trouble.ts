import type { FaultElement } from '../field/fault-ports'

/** Kinds of fault as the contract names them. */
export const FAULT_KINDS = ['short', 'open', 'leak', 'resistance'] as const

/** Kinds that concern another circuit as well: a wire touches one of its wires; the pairs change places; or one wire of each does. */
const STRAY_KINDS = ['crossed', 'swapped', 'split'] as const
export type FaultKind = (typeof FAULT_KINDS)[number] | (typeof STRAY_KINDS)[number]

/** A fault at one place: as a part of the network, and whether it joins one wire to the earth. */
export interface Trouble {
  readonly kind: FaultKind
  readonly element: FaultElement
  readonly toEarth: boolean
  /** Which wire is broken or on the earth; absent: both, or it is not asked. */
  readonly wire?: 'a' | 'b'
}

/** A kind of fault with all the ohms that it may have of its own. */
export interface Hypothesis extends Trouble {
  /** How often a fault is of this kind, before anything is known. */
  readonly chance: number
  /** Logarithms of its own ohms, evenly apart, and the chance of each stretch between two; one value for a fault without ohms. */
  readonly lnOhms: Float64Array
  readonly chances: Float64Array
}
