import type { Store } from '../../state/store'
import { SelectField } from '../select-field'

interface Props {
  readonly store: Store
  readonly label: string
  /** Catalog id of the telephone; null where the station is a joint. */
  readonly value: string | null
  readonly onCommit: (set: string | null) => void
}

/** Which telephone stands at a station of a circuit. */
export function SetField({ store, label, value, onCommit }: Props) {
  const sets = [...store.catalog.value.sets.values()]
  return (
    <SelectField
      label={label}
      value={value ?? ''}
      options={[
        { value: '', text: 'no set: a joint' },
        ...sets.map(({ id, name }) => ({ value: id, text: name })),
      ]}
      onCommit={(id) => onCommit(id === '' ? null : id)}
    />
  )
}
