import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { freeId } from '../../catalog/free-id'
import { withSources } from '../../catalog/sourced'
import { isolated } from '../../isolated'
import type { EntryKind } from '../../plan/kept-entries'
import type { Problem } from '../../problem'
import type { Store } from '../../state/store'
import { OnDemand } from '../question'
import { SelectFieldOf } from '../select-field'
import type { Entry } from './entry-figures'
import { EntrySources } from './entry-sources'
import { KeepForOthers, KeptForOthers } from './kept-for-others'

/** One of a kind. */
const ONE: Readonly<Record<EntryKind, string>> = { wires: 'wire', sets: 'set', supplies: 'supply' }

interface Props<T extends Entry> {
  readonly store: Store
  readonly kind: EntryKind
  /** All that can be copied. */
  readonly known: readonly T[]
  /** The plan's own. */
  readonly own: readonly T[]
  readonly onPut: (entry: T) => readonly Problem[]
  readonly onRemove: (id: string) => readonly Problem[]
  readonly form: (entry: T) => ComponentChildren
  /** What else can be made of the entry that is shown. */
  readonly more?: (entry: T) => ComponentChildren
}

/** The plan's own entries of one kind, each with its form, and a way to start another from a known one. */
export function OwnEntries<T extends Entry>({
  store,
  kind,
  known,
  own,
  onPut,
  onRemove,
  form,
  more,
}: Props<T>) {
  const refusal = useSignal('')
  const what = ONE[kind]
  const chosen = useSignal(known[0]?.id ?? '')
  const shown = known.find((entry) => entry.id === chosen.value)

  const copy = () => {
    if (!shown) return
    onPut({ ...withSources(shown), id: freeId(shown.id, known), name: `${shown.name} (copy)` })
  }
  return (
    <>
      {own.map((entry) => (
        <OnDemand key={entry.id} title={isolated(entry.name)}>
          {form(entry)}
          <KeepForOthers store={store} kind={kind} entry={entry} />
          <button
            type="button"
            class="harm"
            onClick={() => {
              refusal.value = onRemove(entry.id)[0]?.message ?? ''
            }}
          >
            Remove this {what}
          </button>
        </OnDemand>
      ))}
      {refusal.value && (
        <p class="refusal" role="alert">
          {refusal.value}
        </p>
      )}
      <KeptForOthers store={store} kind={kind} />
      <SelectFieldOf
        label={`Known ${kind}`}
        of={chosen}
        options={known.map(({ id, name }) => ({ value: id, text: isolated(name) }))}
      />
      {shown && <EntrySources store={store} entry={shown} />}
      <button type="button" onClick={copy}>
        Copy it to change it
      </button>
      {shown && more?.(withSources(shown))}
    </>
  )
}
