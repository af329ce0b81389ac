import { useSignal } from '@preact/signals'
import { CELL_MASSES } from '../../catalog/built-in'
import { valueAt, withFigure, withSpread } from '../../catalog/entry-value'
import type { Problem } from '../../problem'
import type { Store } from '../../state/store'
import { NumberField } from '../number-field'
import { OnDemand } from '../question'
import { SelectField } from '../select-field'
import { TextField } from '../text-field'
import { Tick } from '../tick'
import { type Entry, type EntryFigure, type Form, labelWords } from './entry-figures'
import { EntrySources } from './entry-sources'

interface Props<T extends Entry> extends Form {
  readonly store: Store
  readonly entry: T
  /** Problems in return refuse the entry as it would be. */
  readonly onPut: (entry: T) => readonly Problem[]
}

const NO_CELL = ''

/** An entry of the plan's own, figure by figure. A changed figure no longer has the source of the copied one, nor its spread; a measured one has the meter's. */
export function EntryForm<T extends Entry>({ store, entry, figures, cells, parts, onPut }: Props<T>) {
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
  const spreadField = ({ at, label, quantity }: EntryFigure) =>
    quantity !== 'count' &&
    typeof valueAt(entry, at) === 'number' && (
      <NumberField
        key={at}
        label={`± ${labelWords(label, store.tongue.value)}`}
        quantity="pct"
        system={store.units.value}
        value={entry.spread?.[at]}
        limit={{ min: 0, max: 10_000 }}
        onCommit={(pct) => onPut(withSpread(entry, at, pct))}
        onClear={() => void onPut(withSpread(entry, at, undefined))}
      />
    )
  const cell = (at: string) => {
    const value = valueAt(entry, at)
    const id = typeof value === 'string' ? value : NO_CELL
    const known = CELL_MASSES.map((each) => ({ value: each.id, text: each.name }))
    return (
      <SelectField
        key={at}
        label="The battery is made of"
        value={id}
        options={[
          { value: NO_CELL, text: 'cells not known here' },
          ...known,
          ...(id === NO_CELL || known.some((each) => each.value === id) ? [] : [{ value: id, text: id }]),
        ]}
        onCommit={(given) => void change(at, given === NO_CELL ? undefined : given)}
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
      {cells.map(cell)}
      {parts.map(({ at, label, begins, figures: inner, cells: innerCells }) => {
        const present = valueAt(entry, at) !== undefined
        return (
          <div key={at}>
            <Tick checked={present} onChange={() => void change(at, present ? undefined : begins)}>
              {label}
            </Tick>
            {present && inner.map(field)}
            {present && innerCells.map(cell)}
          </div>
        )
      })}
      <OnDemand title="How far real ones lie from these figures">
        <p class="soft">Of a hundred real ones 95 lie so near, above or below. Empty: it is exact.</p>
        {[...figures, ...parts.flatMap((part) => part.figures)].map(spreadField)}
      </OnDemand>
      <TextField label="Source" value={entry.source} onCommit={(source) => onPut({ ...entry, source })} />
      <EntrySources store={store} entry={entry} />
    </div>
  )
}
