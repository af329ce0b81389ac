import { LIMITS } from '../../plan/limits'
import type { Weather } from '../../plan/plan'
import { setWeather, setWireTemp } from '../../plan/settings-edits'
import type { Store } from '../../state/store'
import { NumberField } from '../number-field'
import { Question } from '../question'

const WEATHERS: readonly Weather[] = ['dry', 'wet']

/** The weather that the verdict of today holds for. */
export function Conditions({ store }: { store: Store }) {
  const plan = store.plan.value
  return (
    <Question ask="What weather do we plan for?">
      <p>
        {plan.weather === 'dry' ? 'Dry: the wire leaks little.' : 'Wet: the wire leaks into the ground.'} The
        worst weather is judged beside it.
      </p>
      <fieldset class="choice" aria-label="Weather">
        {WEATHERS.map((weather) => (
          <button
            key={weather}
            type="button"
            aria-pressed={plan.weather === weather}
            onClick={() => store.edit((before) => setWeather(before, weather))}
          >
            {weather}
          </button>
        ))}
      </fieldset>
      <NumberField
        label="Temperature of the wire"
        quantity="tempC"
        system={store.units.value}
        value={plan.wireTempC}
        limit={LIMITS.wireTempC}
        onCommit={(tempC) => store.tryEdit((before) => setWireTemp(before, tempC))}
      />
    </Question>
  )
}
