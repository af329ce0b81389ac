import type { Sources } from '../../catalog/sources'
import type { Problem } from '../../problem'
import type { Store } from '../../state/store'
import { EntrySources } from '../entry-sources'
import { NumberField } from '../number-field'
import { TextField } from '../text-field'
import { type EntryFigure, type EntryPart, valueAt, withValueAt } from './entry-figures'

export interface Entry {
  readonly id: string
  readonly name: string
  readonly source: string
  readonly sources?: Sources
}

interface Props<T extends Entry> {
  readonly store: Store
  readonly entry: T
  readonly figures: readonly EntryFigure[]
  readonly parts?: readonly EntryPart[]
  /** Problems in return refuse the entry as it would be. */
  readonly onPut: (entry: T) => readonly Problem[]
}

/** An entry of the plan's own, figure by figure. A figure that is changed by hand loses the source of the copied one. */
export function EntryForm<T extends Entry>({ store, entry, figures, parts = [], onPut }: Props<T>) {
  const change = (at: string, value: unknown) => {
    const { [at]: _, ...sources } = entry.sources ?? {}
    return onPut(withValueAt({ ...entry, sources }, at, value))
  }
  const field = ({ at, label, quantity, optional }: EntryFigure) => {
    const value = valueAt(entry, at)
    return (
      <NumberField
        key={at}
        label={label}
        quantity={quantity}
        system={store.units.value}
        value={typeof value === 'number' ? value : undefined}
        onCommit={(given) => change(at, given)}
        {...(optional && { onClear: () => void change(at, undefined) })}
      />
    )
  }
  return (
    <div class="entry">
      <TextField label="Name" value={entry.name} needed onCommit={(name) => onPut({ ...entry, name })} />
      {figures.map(field)}
      {parts.map(({ at, label, begins, figures: inner }) => {
        const present = valueAt(entry, at) !== undefined
        return (
          <div key={at}>
            <label class="tick">
              <input
                type="checkbox"
                checked={present}
                onChange={() => void change(at, present ? undefined : begins)}
              />
              {label}
            </label>
            {present && inner.map(field)}
          </div>
        )
      })}
      <TextField label="Source" value={entry.source} onCommit={(source) => onPut({ ...entry, source })} />
      <EntrySources entry={entry} />
    </div>
  )
}
