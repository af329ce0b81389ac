import type { Verdict } from '../../budget/rows'

/** Only what is amiss is marked: what works today may not at worst, which stands above the table. */
export const marked = (verdicts: readonly Verdict[]): string =>
  verdicts.includes('fails') ? '✗ FAILS' : verdicts.includes('thin') ? 'thin' : ''
