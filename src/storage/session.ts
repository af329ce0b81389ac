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
  /** Other windows write the same draft, and have the same plan: each takes in what the others do. */
  isJoint: boolean
}

export const newSession = (base: DraftState | null, doc = newKey()): Session => ({
  state: { key: newKey(), revision: 0 },
  doc,
  base,
  changed: false,
  isWritten: false,
  isJoint: false,
})

/** From now on the draft that this window has open is one that several write, or again one of its own that has grown out of that. */
export function setJoint(session: Session, isJoint: boolean): void {
  if (isJoint === session.isJoint) return
  session.isJoint = isJoint
  if (isJoint && session.base && !session.isWritten) {
    session.state = session.base
    session.base = null
    session.isWritten = true
  } else if (!isJoint && session.isWritten) {
    session.base = session.state
    session.state = { key: newKey(), revision: 0 }
    session.isWritten = false
  }
}
