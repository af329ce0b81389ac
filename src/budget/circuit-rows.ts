import { tradeOf } from './checks'
import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import type { CheckKind, CircuitRows, RowOf } from './rows'

/** Every row of one kind of check. */
export function rowsOfKind<K extends CheckKind>(
  kind: K,
  model: CircuitModel,
  conditions: Conditions,
): readonly RowOf[K][] {
  const { each, row } = tradeOf(kind)
  const rows: RowOf[K][] = []
  each(model, conditions, (from, to, where, have, limit) => rows.push(row(from, to, where, have, limit)))
  return rows
}

/** Every figure of a circuit under the given conditions. */
export const circuitRows = (model: CircuitModel, conditions: Conditions): CircuitRows => ({
  loop: rowsOfKind('loop', model, conditions),
  ringing: rowsOfKind('ringing', model, conditions),
  voice: rowsOfKind('voice', model, conditions),
})
