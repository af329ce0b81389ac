/** The kinds of paper that a person can choose, in the order in which they lie. */
export const PAPER_NAMES = [
  'Line route map',
  'Line cards',
  'Circuit diagram',
  'Load list',
  'Test record',
  'Fault card',
  'Recovery record',
  'Circuit figures',
] as const

export type PaperName = (typeof PAPER_NAMES)[number]

/** For the desk, not for the crew. */
export const OFF_UNLESS_ASKED: readonly PaperName[] = ['Circuit figures']
