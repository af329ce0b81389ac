import type { Odds } from '../budget/odds'
import type { ReportCircuit } from '../report/report'

/** By the report's own circuit, which is another one as soon as anything that its figures hang on has changed. */
const known = new WeakMap<ReportCircuit, Odds>()

export function keepOdds(found: ReportCircuit, odds: Odds | undefined): void {
  if (odds) known.set(found, odds)
}

/** The odds that have been reckoned of these circuits, by their ids: they take a second each, and papers do not wait for them. */
export const knownOdds = (circuits: readonly ReportCircuit[]): ReadonlyMap<string, Odds> =>
  new Map(
    circuits.flatMap((circuit) => {
      const odds = known.get(circuit)
      return odds ? [[circuit.id, odds] as const] : []
    }),
  )
