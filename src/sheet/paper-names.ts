/** The kinds of paper that a person can choose, in the order in which they lie. */
export const PAPER_NAMES = [
  'Net at a glance',
  'Line route map',
  'Line cards',
  'Circuit diagram',
  'Load list',
  'Station cards',
  'Board cards',
  'Directory',
  'Traffic diagram',
  'Labels',
  'Test record',
  'Fault card',
  'Recovery record',
  'Circuit figures',
] as const

export type PaperName = (typeof PAPER_NAMES)[number]

/** For the desk, not for the crew; and what wants sheets of its own in the printer. */
export const OFF_UNLESS_ASKED: readonly PaperName[] = ['Circuit figures', 'Labels']

/** Chosen unless told otherwise only where so many boards or exchanges stand. */
export const WITH_BOARDS: { readonly [N in PaperName]?: number } = {
  'Board cards': 1,
  Directory: 1,
  'Traffic diagram': 2,
}

/** All that a sheet of A6 has room for. */
export const FOR_SMALL_SHEETS: readonly PaperName[] = ['Station cards', 'Labels']
