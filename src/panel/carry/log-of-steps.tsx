import { useSignal } from '@preact/signals'
import type { LoggedStep, Sharing } from '../../share/sharing'
import type { Store } from '../../state/store'
import { propertyWords } from '../../words/property-words'

/** So many properties of a step are named. */
const MOST_NAMED = 3
/** The log gives no more than these. */
const MOST_SHOWN = 200

/** Who changed what, the last first, with the way back to each moment. */
export function LogOfSteps({ store, sharing }: { store: Store; sharing: Sharing }) {
  const steps = sharing.log.value
  const said = useSignal('')
  const { box } = sharing
  const readAll = async () => {
    said.value = 'Reading all that the box has …'
    said.value = (await box!.readAll()) || 'The log begins with the plan now.'
  }
  if (steps.length === 0 && !box) return null
  return (
    <section>
      <h2>Who changed what</h2>
      <ul class="log">
        {steps.map((step) => (
          <li key={`${step.atMs} ${step.who} ${step.keys[0]}`}>
            {new Date(step.atMs).toLocaleTimeString()} <bdi>{step.who}</bdi>: {keyWords(store, step)}{' '}
            {sharing.mayWrite && (
              <button type="button" class="quiet" onClick={() => sharing.goBackTo(step)}>
                Back to here
              </button>
            )}
          </li>
        ))}
      </ul>
      {steps.length >= MOST_SHOWN && <p class="soft">These are the last {MOST_SHOWN}.</p>}
      {box && (
        <div class="acts">
          <button type="button" onClick={() => void readAll()}>
            From the beginning
          </button>
        </div>
      )}
      <p class="soft" role="status">
        {said.value}
      </p>
    </section>
  )
}

function keyWords(store: Store, { keys }: LoggedStep): string {
  const plan = store.plan.value
  const named = [...new Set(keys.map((key) => propertyWords(plan, key)))]
  const rest = named.length - MOST_NAMED
  return `${named.slice(0, MOST_NAMED).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`
}
