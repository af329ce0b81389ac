import { useSignal } from '@preact/signals'
import { lineName } from '../../plan/plan'
import type { Store } from '../../state/store'
import { doneInShort, leftSentence } from '../../words/done-words'
import { OnDemand, Question } from '../question'
import { SelectField } from '../select-field'

/** What of the net lies, what is left to do, and the way out to walk a line. */
export function WorkDone({ store }: { store: Store }) {
  const plan = store.plan.value
  const { left, lines } = store.report.value
  const chosen = useSignal('')
  const options = [...plan.lines.values()].map((line) => ({ value: line.id, text: lineName(plan, line) }))
  const [first] = options
  if (!first) return null
  const toWalk = options.some(({ value }) => value === chosen.value) ? chosen.value : first.value
  const done = lines.filter(({ field }) => field.laidM + field.recoveredM + field.testedM > 0)
  const say = store.tongue.value
  return (
    <Question ask="What lies, and what is left?">
      <p>
        {left ? leftSentence(left, say) : 'Nothing was recorded yet. Walk a line with a phone in your hand.'}
      </p>
      <SelectField
        label="Line"
        value={toWalk}
        options={options}
        onCommit={(id) => {
          chosen.value = id
        }}
      />
      <button
        type="button"
        onClick={() => {
          store.walking.value = options.find(({ value }) => value === toWalk)!.value
        }}
      >
        Walk it
      </button>
      {done.length > 0 && (
        <OnDemand title="Line by line">
          <ul class="rows">
            {done.map(({ id, field, wireM }) => (
              <li key={id}>
                <button
                  type="button"
                  class="quiet"
                  onClick={() => {
                    store.selection.value = { kind: 'line', id, legs: [] }
                  }}
                >
                  {say.name(id)}
                </button>
                <span class="soft">{doneInShort(field, wireM, say)}</span>
              </li>
            ))}
          </ul>
        </OnDemand>
      )}
    </Question>
  )
}
