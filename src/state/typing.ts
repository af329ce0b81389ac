import type { Plan } from '../plan/plan'

/** One stretch of typing in one field: what it changes in the plan is one step of undo, however often it is kept meanwhile. */
export interface Typing {
  /** The plan as this typing last made it; null while it has changed nothing. */
  made: Plan | null
  /** Puts the plan back to what it was before the first letter. */
  takeBack: () => void
}

export const startTyping = (): Typing => ({ made: null, takeBack: () => {} })

let underHand: Typing | null = null

/** Hands what was typed to the plan, as part of one stretch of typing. */
export function asTyped<T>(typing: Typing, act: () => T): T {
  underHand = typing
  try {
    return act()
  } finally {
    underHand = null
  }
}

/** The typing that the edit under way belongs to; null where it comes from elsewhere. */
export const typingNow = (): Typing | null => underHand
