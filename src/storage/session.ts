import type { DraftState } from './kept-records'
import { newKey } from './new-key'

/** The document on screen, as this window keeps it. */
export interface Session {
  /** What is written under a key of this window's own. */
  state: DraftState
  readonly doc: string
  /** The draft it grew out of, until that is superseded. */
  base: DraftState | null
  changed: boolean
  /** Whether its own draft has ever been written. */
  isWritten: boolean
}

export const newSession = (base: DraftState | null, doc = newKey()): Session => ({
  state: { key: newKey(), revision: 0 },
  doc,
  base,
  changed: false,
  isWritten: false,
})
