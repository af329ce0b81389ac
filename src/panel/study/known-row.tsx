import type { CircuitStudy } from '../../state/circuit-study'
import type { UnitSystem } from '../../words/units'
import { NumberField } from '../number-field'
import { SelectField } from '../select-field'
import { endsOf, type KnownLine, kindOf, placesOf } from './known-lines'

const READ = { min: 0, max: 1e9 }

interface Props {
  readonly study: CircuitStudy
  readonly row: KnownLine
  readonly system: UnitSystem
  readonly onChange: (changed: Partial<KnownLine>) => void
  readonly onRemove: () => void
}

/** One thing that is known, to be filled in: where, towards whom, and what. */
export function KnownRow({ study, row, system, onChange, onRemove }: Props) {
  const { text, figures, answers } = kindOf(row.kind)
  const isTalk = row.kind === 'rings' || row.kind === 'hears'
  return (
    <li>
      <strong>{text}</strong>
      <SelectField
        label={isTalk ? 'From' : row.kind === 'crank' ? 'At' : 'The meter stands at'}
        value={row.at}
        options={placesOf(study, row.kind)}
        onCommit={(at) => onChange({ at })}
      />
      {row.kind !== 'crank' && (
        <SelectField
          label={isTalk ? 'To' : 'It looks to'}
          value={row.toward}
          options={endsOf(study, row.at)}
          onCommit={(toward) => onChange({ toward })}
        />
      )}
      {answers && (
        <SelectField
          label="What happens"
          value={row.isOk ? 'yes' : 'no'}
          options={[
            { value: 'yes', text: answers[0] },
            { value: 'no', text: answers[1] },
          ]}
          onCommit={(said) => onChange({ isOk: said === 'yes' })}
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
