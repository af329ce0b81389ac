import type { Circuit } from '../../plan/plan'
import type { ReportCircuit } from '../../report/report'
import type { Store } from '../../state/store'
import { ASKED_KINDS, wordsOf } from '../../words/check-words'
import { nameIn } from '../../words/tongue'
import { formatOhms } from '../../words/units'
import { loadWhenShown } from '../load-when-shown'
import { OnDemand } from '../question'

const EntrySources = loadWhenShown(async () => (await import('../catalog/entry-sources')).EntrySources)

/** How the figures were reckoned, and where those that they rest on come from. */
export function BudgetFigures({
  store,
  circuit,
  found,
}: {
  store: Store
  circuit: Circuit
  found: ReportCircuit
}) {
  const catalog = store.catalog.value
  const lines = store.report.value.lines.filter((line) => circuit.lines.includes(line.id))
  const wires = new Set(circuit.lines.map((id) => store.plan.value.lines.get(id)?.wire))
  const used = [
    ...[...wires].map((id) => catalog.wires.get(id ?? '')),
    ...[...new Set(circuit.sets.values())].map((id) => catalog.sets.get(id)),
    circuit.supply ? catalog.supplies.get(circuit.supply.type) : undefined,
  ]
  return (
    <OnDemand title="How this is worked out">
      <p>
        Every line is a uniform line with its resistance, inductance, capacitance and leakage, solved exactly.{' '}
        {ASKED_KINDS.filter((kind) => found[kind].length > 0)
          .map((kind) => wordsOf(kind).reckoned)
          .join(' ')}
      </p>
      <ul class="plain">
        {lines.map((line) => (
          <li key={line.id}>
            {nameIn(store.plan.value, line.id)}: loop {formatOhms(line.loopOhms)}
          </li>
        ))}
      </ul>
      {used.map((entry) => entry && <EntrySources key={entry.id} store={store} entry={entry} />)}
    </OnDemand>
  )
}
