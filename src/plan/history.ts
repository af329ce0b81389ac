import type { Plan } from './plan'

/** Undo is a stack of whole plans; unchanged parts are shared, so it is cheap. */
export interface History {
  readonly past: readonly Plan[]
  readonly present: Plan
  readonly future: readonly Plan[]
}

const LIMIT = 200

export const begin = (present: Plan): History => ({ past: [], present, future: [] })

/** One step forward. A change that changes nothing makes no step. */
export const commit = (h: History, next: Plan): History =>
  next === h.present ? h : { past: [...h.past, h.present].slice(-LIMIT), present: next, future: [] }

/** As if the last step had not been made. */
export function retract(h: History): History {
  const previous = h.past.at(-1)
  return previous ? { past: h.past.slice(0, -1), present: previous, future: [] } : h
}

export function undo(h: History): History {
  const previous = h.past.at(-1)
  return previous ? { past: h.past.slice(0, -1), present: previous, future: [h.present, ...h.future] } : h
}

export function redo(h: History): History {
  const next = h.future[0]
  return next ? { past: [...h.past, h.present], present: next, future: h.future.slice(1) } : h
}
