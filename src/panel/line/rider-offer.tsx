import { addCircuit } from '../../plan/circuit-edits'
import type { Line, Over } from '../../plan/plan'
import { newCircuitId } from '../../state/new-id'
import type { Store } from '../../state/store'
import { reasonWords } from '../circuit/over-fields'
import { OnDemand } from '../question'

const WAYS: { readonly [O in Over]: string } = {
  phantom: 'A phantom over two of its pairs',
  simplex: 'A simplex over one of its pairs and the earth',
}

interface Props {
  readonly store: Store
  readonly line: Line
  readonly onStart: (over: Over) => void
}

/** One more circuit where wire runs short: over pairs that others use, with repeating coils at both ends. */
export function RiderOffer({ store, line, onStart }: Props) {
  const plan = store.plan.value
  return (
    <OnDemand title="One more circuit without more wire">
      <p>It rides on pairs that others use, with a repeating coil at both ends of each.</p>
      {(Object.keys(WAYS) as Over[]).map((over) => {
        const tried = addCircuit(plan, { id: newCircuitId(plan), lines: [line.id], over })
        return (
          <p key={over}>
            <button type="button" disabled={!tried.ok} onClick={() => onStart(over)}>
              {WAYS[over]}
            </button>
            {!tried.ok && <span class="soft"> {reasonWords(plan, tried.problems[0]!)}.</span>}
          </p>
        )
      })}
    </OnDemand>
  )
}
