import { useSignal } from '@preact/signals'
import { valueAt, withFigure } from '../../catalog/entry-value'
import type { Problem } from '../../problem'
import type { Store } from '../../state/store'
import { NumberField } from '../number-field'
import { TextField } from '../text-field'
import { type Entry, type EntryFigure, type EntryPart, labelWords } from './entry-figures'
import { EntrySources } from './entry-sources'

interface Props<T extends Entry> {
  readonly store: Store
  readonly entry: T
  readonly figures: readonly EntryFigure[]
  readonly parts: readonly EntryPart[]
  /** Problems in return refuse the entry as it would be. */
  readonly onPut: (entry: T) => readonly Problem[]
}

/** An entry of the plan's own, figure by figure. A changed figure no longer has the source of the copied one, nor its spread; a measured one has the meter's. */
export function EntryForm<T extends Entry>({ store, entry, figures, parts, onPut }: Props<T>) {
  const meterPct = useSignal<number | undefined>(undefined)
  const change = (at: string, value: unknown) =>
    onPut(withFigure(entry, { at, value, meterPct: meterPct.value }))
  const field = ({ at, label, quantity, optional }: EntryFigure) => {
    const value = valueAt(entry, at)
    return (
      <NumberField
        key={at}
        label={labelWords(label, store.tongue.value)}
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
      <NumberField
        label="If measured, the meter is within ±"
        quantity="pct"
        system={store.units.value}
        value={meterPct.value}
        limit={{ min: 0.01, max: 100 }}
        onCommit={(pct) => {
          meterPct.value = pct
          return []
        }}
        onClear={() => {
          meterPct.value = undefined
        }}
      />
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
      <EntrySources store={store} entry={entry} />
    </div>
  )
}
