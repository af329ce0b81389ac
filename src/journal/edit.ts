import { canonical } from './canonical'

/** No clock is later than this, ms: the end of the year 2199. */
export const LATEST_MS = 7_258_118_399_000

/** One register as one hand set it; an edit without a value took it away. */
export interface Edit {
  /** Who did it: made by chance, once for each visit of a page. */
  readonly hand: string
  /** Counted from 1, hand by hand, with no gap. */
  readonly number: number
  /** How many edits of the same step come after it: a step is taken whole. Absent for none. */
  readonly left?: number
  /** When, ms since 1970 by the hand's own clock, and always later than all that the hand had seen. */
  readonly at: number
  readonly key: string
  readonly value?: unknown
  /** The edits that stood there and that this one takes the place of; where a thing is taken out, all that stood in it. */
  readonly over: readonly string[]
  /** What stood there before, where that may be needed again. */
  readonly was?: unknown
}

export const idOf = ({ hand, number }: Pick<Edit, 'hand' | 'number'>): string => `${hand}:${number}`

/** A value that was there when the journal began: every edit takes its place. */
export const born = (key: string, value: unknown): Edit => ({
  hand: '',
  number: 0,
  at: 0,
  key,
  value,
  over: [],
})

export const isBorn = ({ hand }: Edit): boolean => hand === ''

/** Of two edits that did not know of each other, the one that holds: the later; the same one whoever asks. */
export function later(a: Edit, b: Edit): Edit {
  if (a.at !== b.at) return a.at > b.at ? a : b
  const [first, second] = [canonical(a.value), canonical(b.value)]
  if (first !== second) return first > second ? a : b
  return a.hand > b.hand ? a : b
}

/** What a register says whose edits are these: of those that have a value the last one; undefined where none has. */
export function standing(edits: readonly Edit[] | undefined): Edit | undefined {
  let found: Edit | undefined
  for (const edit of edits ?? []) if (edit.value !== undefined) found = found ? later(found, edit) : edit
  return found
}
