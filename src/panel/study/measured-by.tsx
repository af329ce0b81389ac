import { USUAL_METER_PCT } from '../../field/readings'
import type { UnitSystem } from '../../words/units'
import { NumberField } from '../number-field'
import { SelectField } from '../select-field'
import type { Measuring } from './known-lines'

const WEATHERS = [
  { value: '', text: 'as the plan has it' },
  { value: 'dry', text: 'dry' },
  { value: 'wet', text: 'wet' },
] as const

interface Props {
  readonly by: Measuring
  readonly system: UnitSystem
  readonly onChange: (changed: Measuring) => void
}

/** How good the meter is, and in what weather it was read: asked once for all of it. */
export function MeasuredBy({ by, system, onChange }: Props) {
  return (
    <div class="known">
      <NumberField
        label="The meter errs by, %"
        quantity="ratio"
        system={system}
        value={by.meterPct}
        otherwise={USUAL_METER_PCT}
        limit={{ min: 0, max: 100 }}
        onCommit={(meterPct) => {
          onChange({ ...by, meterPct })
          return []
        }}
        onClear={() => onChange({ ...by, meterPct: undefined })}
      />
      <NumberField
        label="Temperature of the wire, °C"
        quantity="ratio"
        system={system}
        value={by.tempC}
        limit={{ min: -60, max: 90 }}
        onCommit={(tempC) => {
          onChange({ ...by, tempC })
          return []
        }}
        onClear={() => onChange({ ...by, tempC: undefined })}
      />
      <SelectField
        label="Weather now"
        value={by.weather ?? ''}
        options={WEATHERS}
        onCommit={(weather) => onChange({ ...by, weather: weather === '' ? undefined : weather })}
      />
    </div>
  )
}
