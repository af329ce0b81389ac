import { valueAt } from '../../catalog/entry-value'
import { MEASURED } from '../../shelf/shelf-schema'
import type { Store } from '../../state/store'
import { formatQuantity } from '../../words/units'
import { NumberField } from '../number-field'
import { OnDemand } from '../question'
import { READ_OF, type Row } from './things'

export const COUNT = { min: 0, max: 10_000, whole: true }

/** One thing on the shelf: how many there are, and what a meter read of them. */
export function ShelfRow({ store, row }: { store: Store; row: Row }) {
  const system = store.units.value
  const { name, count, measured, put, away } = row
  const entry = entryOf(store, row)
  // A set without a bell has no volts that ring it.
  const figures = READ_OF[row.kind].filter(({ at }) => !entry || valueAt(entry, at) !== undefined)
  const read = figures.flatMap(({ at, quantity }) => {
    const value = measured?.[at]
    return value === undefined ? [] : [formatQuantity(value, quantity, system)]
  })
  return (
    <li>
      <div class="row">
        <NumberField
          label={name}
          quantity="count"
          system={system}
          value={count}
          limit={COUNT}
          onCommit={(many) => {
            put({ count: many })
            return []
          }}
        />
        <button type="button" class="quiet" aria-label={`Remove ${name} from the shelf`} onClick={away}>
          Remove
        </button>
      </div>
      {figures.length > 0 && (
        <OnDemand title={read.length > 0 ? `Measured: ${read.join(', ')}` : 'Measured?'}>
          {figures.map(({ at, label, quantity }) => (
            <NumberField
              key={at}
              label={label}
              quantity={quantity}
              system={system}
              value={measured?.[at]}
              limit={limitOf(row.kind, at)}
              onCommit={(value) => {
                put({ measured: { ...measured, [at]: value } })
                return []
              }}
              onClear={() => {
                const { [at]: _, ...others } = measured ?? {}
                put({ measured: others })
              }}
            />
          ))}
        </OnDemand>
      )}
    </li>
  )
}

const limitOf = (kind: Row['kind'], at: string) =>
  (
    MEASURED[kind] as Readonly<
      Record<string, { readonly limit: { readonly min: number; readonly max: number } }>
    >
  )[at]!.limit

/** The entry of which a figure was measured; cells and rods are none. */
function entryOf({ choices }: Store, { kind, id }: Row): object | undefined {
  if (kind === 'cells' || kind === 'rods') return undefined
  return (choices[kind].value as readonly { readonly id: string }[]).find((each) => each.id === id)
}
