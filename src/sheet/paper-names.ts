/** The kinds of paper that a person can choose, in the order in which they lie. */
export const PAPER_NAMES = [
  'Line route map',
  'Route sheets',
  'Circuit diagram',
  'Load list',
  'Tag list',
  'Test card',
  'Circuit figures',
  'Fault card',
] as const

export type PaperName = (typeof PAPER_NAMES)[number]
