import { LOADING_DISTRICTS, LOADINGS, type LoadingDistrict } from '../../catalog/overhead-loading'
import { LIMITS } from '../../plan/limits'
import type { Weather } from '../../plan/plan'
import { setLoadingDistrict, setWeather, setWireTemp } from '../../plan/settings-edits'
import type { Store } from '../../state/store'
import { NumberField } from '../number-field'
import { Question } from '../question'
import { SelectField } from '../select-field'

const NOT_SAID = ''

/** `medium: 6.4 mm of ice`. */
function districtWords(district: LoadingDistrict, store: Store): string {
  const { iceMm } = LOADINGS[district]
  return `${district}: ${iceMm > 0 ? `${store.tongue.value.quantity(iceMm, 'diameterMm')} of ice` : 'no ice, more wind'}`
}

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
      <SelectField
        label="Ice and wind on spans"
        value={plan.loadingDistrict ?? NOT_SAID}
        options={[
          { value: NOT_SAID, text: 'not known' },
          ...LOADING_DISTRICTS.map((district) => ({ value: district, text: districtWords(district, store) })),
        ]}
        onCommit={(district) =>
          store.edit((before) => setLoadingDistrict(before, district === NOT_SAID ? null : district))
        }
      />
    </Question>
  )
}
