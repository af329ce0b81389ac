import type { CircuitStudy } from '../../state/circuit-study'
import type { Tongue } from '../../words/tongue'
import type { UnitSystem } from '../../words/units'
import { NumberField } from '../number-field'
import { SelectField } from '../select-field'
import { kindOf } from './known-kinds'
import { endsOf, type KnownLine, placesOf } from './known-lines'

const READ = { min: 0, max: 1e9 }

/** What the two places of a row are called, by what it is about. */
const LABELS = {
  alone: ['At', ''],
  between: ['From', 'To'],
  meter: ['The meter stands at', 'It looks to'],
  'meter-at-tags': ['The meter stands at', 'It looks to'],
  stretch: ['From', 'To'],
  record: ['As it was kept', ''],
} as const

interface Props {
  readonly study: CircuitStudy
  readonly row: KnownLine
  readonly system: UnitSystem
  readonly say: Tongue
  readonly onChange: (changed: Partial<KnownLine>) => void
  readonly onRemove: () => void
}

/** One thing that is known, to be filled in: where, towards whom, and what. */
export function KnownRow({ study, row, system, say, onChange, onRemove }: Props) {
  const { text, figures, answers, where } = kindOf(row.kind)
  const [atLabel, towardLabel] = LABELS[where]
  const places = placesOf(study, row.kind, say)
  return (
    <li>
      <strong>{text}</strong>
      {places.length === 0 ? (
        <p class="soft">Nothing was read or tested on the walk of these lines.</p>
      ) : (
        <SelectField label={atLabel} value={row.at} options={places} onCommit={(at) => onChange({ at })} />
      )}
      {towardLabel && (
        <SelectField
          label={towardLabel}
          value={row.toward}
          options={endsOf(study, row.kind, row.at)}
          onCommit={(toward) => onChange({ toward })}
        />
      )}
      {answers && (
        <SelectField
          label="What happens"
          value={row.said}
          options={answers}
          onCommit={(said) => onChange({ said })}
        />
      )}
      {figures.map((label, i) => {
        const name = i === 0 ? 'first' : 'second'
        return (
          <NumberField
            key={name}
            label={label}
            quantity="ratio"
            system={system}
            value={row[name]}
            limit={READ}
            onCommit={(value) => {
              onChange({ [name]: value })
              return []
            }}
            onClear={() => onChange({ [name]: undefined })}
          />
        )
      })}
      <button type="button" class="quiet" onClick={onRemove}>
        Take out
      </button>
    </li>
  )
}
