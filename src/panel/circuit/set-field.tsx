import { isolated } from '../../isolated'
import type { Store } from '../../state/store'
import { SelectField } from '../select-field'

/** No id of a set: none holds a blank. */
const SEVERAL = ' '

interface Props {
  readonly store: Store
  readonly label: string
  /** Catalog id of the telephone; null where the station is a joint. */
  readonly value: string | null
  /** The field stands for stations whose sets differ. */
  readonly several?: boolean
  readonly onCommit: (set: string | null) => void
}

/** Which telephone stands at a station of a circuit. */
export function SetField({ store, label, value, several, onCommit }: Props) {
  const sets = store.choices.sets.value
  return (
    <SelectField
      label={label}
      value={several ? SEVERAL : (value ?? '')}
      options={[
        ...(several ? [{ value: SEVERAL, text: 'several' }] : []),
        { value: '', text: 'no telephone, only a joint' },
        ...sets.map(({ id, name }) => ({ value: id, text: isolated(name) })),
      ]}
      onCommit={(id) => id !== SEVERAL && onCommit(id === '' ? null : id)}
    />
  )
}
