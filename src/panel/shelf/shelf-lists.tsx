import type { Length } from '../../shelf/shelf'
import type { KeptShelf } from '../../state/shelf-state'
import type { Store } from '../../state/store'
import { formatQuantity } from '../../words/units'
import { NumberField } from '../number-field'
import { OneMore } from './one-more'
import { COUNT, ShelfRow } from './shelf-row'
import { READ_OF, type Row, rowsOf } from './things'

const ALSO: { readonly [N in keyof KeptShelf['also']]: string } = {
  reels: 'Reels',
  people: 'People',
}

/** What lies on the shelf: each thing with its count and what was read of it, and a way to put one more on it. */
export function ShelfLists({ store }: { store: Store }) {
  const shelf = store.onShelf.value
  const rows = rowsOf(store)
  const set = (change: Partial<KeptShelf>) => {
    store.onShelf.value = { ...shelf, ...change }
    return []
  }
  const { stock } = store.settled.value
  return (
    <section aria-label="On the shelf">
      <h2>On the shelf</h2>
      {store.onShelfFailure.value && <p class="fails">{store.onShelfFailure.value}</p>}
      {rows.length === 0 && <p class="soft">Nothing yet.</p>}
      <ul class="things">
        {rows.map((row) => (
          <ShelfRow key={row.key} store={store} row={row} />
        ))}
      </ul>
      <OneMore store={store} />
      <details class="on-demand">
        <summary>Also there: reels, people</summary>
        {Object.entries(ALSO).map(([name, label]) => (
          <NumberField
            key={name}
            label={label}
            quantity="count"
            system={store.units.value}
            value={shelf.also[name as keyof KeptShelf['also']]}
            limit={COUNT}
            onCommit={(count) => set({ also: { ...shelf.also, [name]: count } })}
          />
        ))}
        <p class="soft">They are kept and printed with the rest; no net is reckoned with them.</p>
      </details>
      <div class="acts">
        {stock.length > 0 && (
          <button type="button" onClick={() => void set({ wires: withStock(shelf.wires, stock) })}>
            Take the wire from the plan’s stock
          </button>
        )}
        {rows.length > 0 && (
          <button type="button" onClick={() => print()}>
            Print the list
          </button>
        )}
      </div>
      <PrintedList store={store} rows={rows} />
    </section>
  )
}

/** What comes out of the printer instead of the dialog. */
function PrintedList({ store, rows }: { store: Store; rows: readonly Row[] }) {
  const system = store.units.value
  const { also } = store.onShelf.value
  const others = Object.entries(ALSO).flatMap(([name, label]) => {
    const count = also[name as keyof KeptShelf['also']]
    return count > 0 ? [{ key: name, name: label, count, read: '' }] : []
  })
  const readOf = ({ kind, measured }: Row) =>
    READ_OF[kind]
      .filter(({ at }) => measured?.[at] !== undefined)
      .map(({ at, label, quantity }) => `${label}: ${formatQuantity(measured![at]!, quantity, system)}`)
      .join(', ')
  return (
    <table class="printed-list" aria-hidden="true">
      <caption>On the shelf</caption>
      <tbody>
        {[...rows.map((row) => ({ ...row, read: readOf(row) })), ...others].map(
          ({ key, name, count, read }) => (
            <tr key={key}>
              <td>{count} ×</td>
              <td>{name}</td>
              <td>{read}</td>
              <td>☐</td>
            </tr>
          ),
        )}
      </tbody>
    </table>
  )
}

/** What there is in the place of the plan's stock: a length that is on the shelf already is not counted twice. */
const withStock = (wires: readonly Length[], stock: readonly Length[]): readonly Length[] => [
  ...wires.filter(
    ({ wire, lengthM }) => !stock.some((each) => each.wire === wire && each.lengthM === lengthM),
  ),
  ...stock.map(({ wire, lengthM, count }) => ({ wire, lengthM, count })),
]
