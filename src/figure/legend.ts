import { LAYS } from '../plan/lays'
import type { Lay } from '../plan/plan'
import { LAY_LETTERS, LAY_WORDS } from '../words/plan-words'

/** What is drawn of a net besides its wire. */
export type Sign =
  | 'station'
  | 'supply'
  | 'board'
  | 'exchange'
  | 'joint'
  | 'bend'
  | 'splice'
  | 'tag'
  | 'caution'

/** What each sign stands for, in the order of a legend: in a word or two for paper, and in full. */
export const SIGN_WORDS: Readonly<Record<Sign, { readonly brief: string; readonly full: string }>> = {
  station: { brief: 'station', full: 'station with a telephone' },
  supply: { brief: 'supply', full: 'station with the supply' },
  board: { brief: 'board', full: 'board worked by hand' },
  exchange: { brief: 'exchange', full: 'automatic exchange' },
  joint: { brief: 'joint', full: 'joint: nobody listens there' },
  bend: { brief: 'bend', full: 'bend' },
  splice: { brief: 'splice', full: 'splice, where a spool ends' },
  tag: { brief: 'tag', full: 'tag; with a second rim, a test point' },
  caution: { brief: 'caution', full: 'caution' },
}

/** Lays in the order of a legend, each with its letter: `S surface`. */
export const LAY_SIGNS: readonly (readonly [lay: Lay, words: string])[] = LAYS.map((lay) => [
  lay,
  `${LAY_LETTERS[lay]} ${LAY_WORDS[lay]}`,
])

/** What was done on a stretch of wire, as it is drawn on it. */
export type DoneSign = 'laid' | 'tested' | 'recovered'

/** In the order of a legend; wire that bears none of these is planned. */
export const DONE_SIGNS: readonly (readonly [done: DoneSign, words: string])[] = [
  ['laid', 'laid'],
  ['tested', 'laid, tested'],
  ['recovered', 'taken up'],
]
