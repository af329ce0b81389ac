import { tradeOf } from '../../budget/checks'
import type { CheckKind, CheckOf, RowOf, Verdict } from '../../budget/rows'
import { judge } from '../../budget/verdict'
import { wordsOf } from '../../words/check-words'
import { plainNumber } from '../../words/units'

/** One check, ready to be drawn: what there is beside what is needed. */
export interface MarginRow {
  readonly name: string
  readonly verdict: Verdict
  /** 1 where there is just as much as is needed; more is better. */
  readonly share: number
  readonly is: string
  readonly needs: string
}

type NameOf = (stationId: string) => string

/** The checks of one kind, ready to be drawn. Two ways that read alike are one row, where the kind says so. */
export function marginRows<K extends CheckKind>(
  kind: K,
  rows: readonly RowOf[K][],
  nameOf: NameOf,
): readonly MarginRow[] {
  const { named, have, limit, call } = tradeOf(kind)
  const { label, figure, share, bothWays } = wordsOf(kind)
  const read = (row: RowOf[K], from: string, to: string) =>
    JSON.stringify([from, to, figure(have(row)), limit(row)])
  const callOf = (row: RowOf[K]) => call(named(row))
  const all = new Set(bothWays ? rows.map((row) => read(row, callOf(row).from, callOf(row).to)) : [])
  return rows.flatMap((row) => {
    const { from, to } = callOf(row)
    const alike = all.has(read(row, to, from))
    if (alike && from > to) return []
    const name = label(named(row) as CheckOf<K>, nameOf)
    return [
      {
        name: alike ? `${nameOf(from)} ↔ ${nameOf(to)}` : name,
        verdict: judge(kind, row),
        share: share(have(row), limit(row)),
        is: figure(have(row)),
        needs: `/ ${plainNumber(limit(row))}`,
      },
    ]
  })
}
