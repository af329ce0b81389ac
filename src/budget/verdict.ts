import { CHECK_KINDS, tradeOf } from './checks'
import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import type { Check, CheckKind, CheckOf, CircuitRows, RowOf, TakeFigure, Verdict } from './rows'

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
  const { have, limit, spare, isThin } = tradeOf(kind)
  const [there, needed] = [have(row), limit(row)]
  if (!(spare(there, needed) >= 0)) return 'fails'
  return isThin(there, needed) ? 'thin' : 'works'
}

/** What is not a number has nothing to spare. */
const orNothing = (nepers: number): number => (Number.isNaN(nepers) ? Number.NEGATIVE_INFINITY : nepers)

/** The row of one kind with least to spare; null where there is none. */
export function leastOf<K extends CheckKind>(kind: K, rows: readonly RowOf[K][]): Margin<K> | null {
  const { have, limit, spare, named } = tradeOf(kind)
  let least: RowOf[K] | undefined
  let nepers = Number.POSITIVE_INFINITY
  for (const row of rows) {
    const known = orNothing(spare(have(row), limit(row)))
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

/** What each kind of check has to spare at least, in nepers, in the order of `CHECK_KINDS`, and the tightest check; null where there is none. */
export interface Least {
  readonly ofKinds: readonly number[]
  readonly nepers: number
  readonly check: Check | null
}

/** The same of rows that are known. */
export function leastOfRows(rows: CircuitRows): Least {
  const margins = CHECK_KINDS.map((kind) => leastOf(kind, rows[kind] as readonly RowOf[CheckKind][]))
  const ofKinds = margins.map((margin) => margin?.nepers ?? Number.POSITIVE_INFINITY)
  const nepers = Math.min(...ofKinds)
  return { ofKinds, nepers, check: (margins[ofKinds.indexOf(nepers)]?.check as Check | undefined) ?? null }
}

/** The same without a row for every figure, for whoever tries one condition after the other. */
export function leastUnder(model: CircuitModel, conditions: Conditions): Least {
  let check: Check | null = null
  let least = Number.POSITIVE_INFINITY
  const ofKinds = CHECK_KINDS.map((kind) => {
    const { each, spare, row, named } = tradeOf(kind)
    let figure: Parameters<TakeFigure> | undefined
    let nepers = Number.POSITIVE_INFINITY
    each(model, conditions, (from, to, where, have, limit) => {
      const known = orNothing(spare(have, limit))
      if (figure && !(known < nepers)) return
      nepers = known
      figure = [from, to, where, have, limit]
    })
    if (figure && (check === null || nepers < least)) {
      least = nepers
      check = named(row(...figure)) as Check
    }
    return nepers
  })
  return { ofKinds, nepers: least, check }
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
