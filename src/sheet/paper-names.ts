/** The kinds of paper that a person can choose, in the order in which they lie. */
export const PAPER_NAMES = [
  'Net at a glance',
  'How far',
  'Ways of a line',
  'Line cards',
  'Station cards',
  'Board cards',
  'Load list',
  'Directory',
  'Traffic diagram',
  'Labels',
  'Circuit diagram',
  'Test record',
  'Fault card',
  'Recovery record',
  'Circuit figures',
] as const

export type PaperName = (typeof PAPER_NAMES)[number]

/** What goes out with the crews and hangs at the stations; all else is for the desk or for later, or wants other sheets in the printer. */
export const FIRST_PAPERS: readonly PaperName[] = [
  'Net at a glance',
  'Line cards',
  'Station cards',
  'Board cards',
]

/** Chosen at first as well where a board or an exchange stands: who is reached by which number hangs beside every telephone. */
export const WITH_A_BOARD: readonly PaperName[] = ['Directory']

/** Chosen at first as well while the map shows how far it could go. */
export const WITH_SHADES: readonly PaperName[] = ['How far']

/** Chosen at first as well while the map shows ways that a line could take. */
export const WITH_WAYS: readonly PaperName[] = ['Ways of a line']

/** All that a sheet of A6 has room for. */
export const FOR_SMALL_SHEETS: readonly PaperName[] = ['Station cards', 'Board cards', 'Directory', 'Labels']
