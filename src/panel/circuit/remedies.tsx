import type { Circuit } from '../../plan/plan'
import { isAmiss } from '../../report/is-amiss'
import { applyChanges } from '../../report/remedy-changes'
import type { Remedy, ReportCircuit } from '../../report/report'
import type { Store } from '../../state/store'
import { remedyWords } from '../../words/remedy-words'
import { Question } from '../question'
import { RemedyList } from './remedy-list'

/** What would mend a circuit. */
export function Remedies({
  store,
  circuit,
  found,
}: {
  store: Store
  circuit: Circuit
  found: ReportCircuit
}) {
  const remedies = store.remedies.value.get(circuit.id) ?? found.remedies
  if (remedies.length > 0)
    return (
      <Question ask="What would mend it?">
        <ApplicableRemedies store={store} circuit={circuit} found={found} remedies={remedies} />
      </Question>
    )
  if (!store.remedyFailure.value || !isAmiss(found)) return null
  return (
    <Question ask="What would mend it?">
      <p class="fails" role="alert">
        {store.remedyFailure.value}
      </p>
    </Question>
  )
}

/** Remedies with a button each; after one is applied it is told how the circuit stood and how it stands. */
export function ApplicableRemedies({
  store,
  circuit,
  found,
  remedies,
}: {
  store: Store
  circuit: Circuit
  found: ReportCircuit
  remedies: readonly Remedy[]
}) {
  const apply = (remedy: Remedy) => {
    const what = remedyWords(remedy.changes, store.settled.peek(), circuit, store.tongue.peek())
    if (!store.mayEdit()) return
    store.edit((before) => applyChanges(before, circuit.id, remedy.changes))
    const now = store.report.peek().circuits.find(({ id }) => id === circuit.id)
    if (now) store.tell(`${what}. ${standingWords('It was', found)}. ${standingWords('Now it is', now)}`)
  }
  return <RemedyList remedies={remedies} store={store} circuit={circuit} onApply={apply} />
}

const standingWords = (lead: string, { verdict, worst }: ReportCircuit): string =>
  `${lead}: ${verdict} today, ${worst.verdict} in the worst weather`
