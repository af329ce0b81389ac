import type { LoggedStep, Sharing } from '../../share/sharing'
import type { Store } from '../../state/store'
import { propertyWords } from '../../words/property-words'

/** So many properties of a step are named. */
const MOST_NAMED = 3

/** Who changed what, the last first, with the way back to each moment. */
export function LogOfSteps({ store, sharing }: { store: Store; sharing: Sharing }) {
  const steps = sharing.log.value
  if (steps.length === 0) return null
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
    </section>
  )
}

function keyWords(store: Store, { keys }: LoggedStep): string {
  const plan = store.plan.value
  const named = [...new Set(keys.map((key) => propertyWords(plan, key)))]
  const rest = named.length - MOST_NAMED
  return `${named.slice(0, MOST_NAMED).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`
}
