import type { CatalogEntries } from '../../catalog/catalog'
import { isolated } from '../../isolated'
import { type EntryKind, isKept, withKept, withoutKept } from '../../plan/kept-entries'
import type { Store } from '../../state/store'

/** Keeps one of the plan's own entries in this browser, where every plan offers it. */
export function KeepForOthers(props: {
  readonly store: Store
  readonly kind: EntryKind
  readonly entry: { readonly id: string }
}) {
  const { store, kind } = props
  const { keptEntries, keptEntriesFailure } = store
  const entry = props.entry as CatalogEntries[EntryKind][number]
  const keep = () => {
    keptEntries.value = withKept(keptEntries.value, kind, entry)
  }
  if (isKept(keptEntries.value, kind, entry) && !keptEntriesFailure.value)
    return <p class="soft">Kept in this browser: every plan offers it.</p>
  return (
    <button type="button" onClick={keep}>
      Keep it for other plans
    </button>
  )
}

/** The entries that are kept for every plan, each with the way to forget it. */
export function KeptForOthers({ store, kind }: { readonly store: Store; readonly kind: EntryKind }) {
  const { keptEntries, keptEntriesFailure } = store
  const kept = keptEntries.value[kind]
  return (
    <>
      {keptEntriesFailure.value && (
        <p class="fails" role="alert">
          {keptEntriesFailure.value}
        </p>
      )}
      {kept.length > 0 && (
        <>
          <h3>Kept for every plan</h3>
          <ul class="rows">
            {kept.map(({ id, name }) => (
              <li key={id}>
                <span>{isolated(name)}</span>
                <button
                  type="button"
                  aria-label={`Forget ${name}`}
                  onClick={() => {
                    keptEntries.value = withoutKept(keptEntries.value, kind, id)
                  }}
                >
                  Forget
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  )
}
