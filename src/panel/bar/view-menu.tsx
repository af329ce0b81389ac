import type { Signal } from '@preact/signals'
import type { PlaceForm } from '../../geo/place-text'
import type { Theme } from '../../state/preferences'
import type { Store } from '../../state/store'
import type { UnitSystem } from '../../words/units'
import { Menu } from './menu'

const UNITS: readonly { value: UnitSystem; text: string }[] = [
  { value: 'metric', text: 'Metric' },
  { value: 'us', text: 'US' },
]
const SWITCH: readonly { value: 'on' | 'off'; text: string }[] = [
  { value: 'on', text: 'On' },
  { value: 'off', text: 'Off' },
]
const THEMES: readonly { value: Theme; text: string }[] = [
  { value: 'system', text: 'As the system' },
  { value: 'light', text: 'Light' },
  { value: 'dark', text: 'Dark' },
  { value: 'night', text: 'Red, for the night' },
]
const PLACES: readonly { value: PlaceForm; text: string }[] = [
  { value: 'decimal', text: '47.2184°' },
  { value: 'minutes', text: '47° 13.104′' },
  { value: 'seconds', text: '47° 13′ 06.2″' },
  { value: 'grid', text: 'Grid reference (MGRS)' },
  { value: 'utm', text: 'UTM' },
]

/** How things are shown and worked: units, places, light or dark, the ground, keys. */
export function ViewMenu({ store }: { store: Store }) {
  return (
    <Menu title="View" hint="Units, places, light and dark, the ground, keys">
      <Choice label="Units" signal={store.units} options={UNITS} />
      <Choice label="Places as" signal={store.placeForm} options={PLACES} />
      <Choice label="Light" signal={store.theme} options={THEMES} />
      <Choice label="Hill shading" signal={store.shade} options={SWITCH} />
      <Choice label="Contours" signal={store.contours} options={SWITCH} />
      <Choice label="Keys of one letter, digit or sign" signal={store.letterKeys} options={SWITCH} />
    </Menu>
  )
}

function Choice<T extends string>({
  label,
  signal,
  options,
}: {
  label: string
  signal: Signal<T>
  options: readonly { readonly value: T; readonly text: string }[]
}) {
  return (
    <fieldset class="choice" aria-label={label}>
      <span class="soft">{label}</span>
      {options.map(({ value, text }) => (
        <button
          key={value}
          type="button"
          aria-pressed={signal.value === value}
          onClick={() => {
            signal.value = value
          }}
        >
          {text}
        </button>
      ))}
    </fieldset>
  )
}
