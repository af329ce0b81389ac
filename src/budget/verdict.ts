import { CHECK_KINDS, tradeOf } from './checks'
import type { Check, CheckKind, CheckOf, CircuitRows, RowOf, Verdict } from './rows'

/** Verdicts in order: the higher, the better. */
export const RANK: Readonly<Record<Verdict, number>> = { fails: 0, thin: 1, works: 2 }

/** One check with how far it is from failing, in nepers: below 0 it fails. */
export interface Margin<K extends CheckKind = CheckKind> {
  readonly check: CheckKind extends K ? Check : CheckOf<K>
  readonly row: RowOf[K]
  readonly nepers: number
}

/** How one row stands. What is not a number fails. */
export function judge<K extends CheckKind>(kind: K, row: RowOf[K]): Verdict {
  const { spare, isThin } = tradeOf(kind)
  if (!(spare(row) >= 0)) return 'fails'
  return isThin(row) ? 'thin' : 'works'
}

/** The row of one kind with least to spare; null where there is none. */
export function leastOf<K extends CheckKind>(kind: K, rows: readonly RowOf[K][]): Margin<K> | null {
  const { spare, named } = tradeOf(kind)
  let least: RowOf[K] | undefined
  let nepers = Number.POSITIVE_INFINITY
  for (const row of rows) {
    const margin = spare(row)
    const known = Number.isNaN(margin) ? Number.NEGATIVE_INFINITY : margin
    if (least && !(known < nepers)) continue
    nepers = known
    least = row
  }
  return least ? { check: named(least) as Margin<K>['check'], row: least, nepers } : null
}

/** The check with least to spare, over all budgets; null where there is no check. */
export function leastMargin(rows: CircuitRows): Margin | null {
  let least: Margin | null = null
  for (const kind of CHECK_KINDS) {
    const margin = leastOf(kind, rows[kind] as readonly RowOf[CheckKind][]) as Margin | null
    if (margin && !(least && margin.nepers >= least.nepers)) least = margin
  }
  return least
}

/** `ringing A → B`, or `loop A – B at A`: a check as the report names it, by station ids. */
export const checkText = (check: Check): string => tradeOf(check.kind).text(check as never)

/** Verdict of a circuit: *fails* where a check fails or something is missing, *thin* where a margin is under the comfort line. */
export function verdictOf(rows: CircuitRows, missing: readonly unknown[]): Verdict {
  if (missing.length > 0) return 'fails'
  let worst: Verdict = 'works'
  for (const kind of CHECK_KINDS) {
    for (const row of rows[kind] as readonly RowOf[CheckKind][]) {
      const verdict = judge(kind, row as never)
      if (RANK[verdict] < RANK[worst]) worst = verdict
    }
  }
  return worst
}
