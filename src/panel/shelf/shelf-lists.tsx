import { useSignal } from '@preact/signals'
import { CELL_MASSES } from '../../catalog/built-in'
import { isolated } from '../../isolated'
import type { Counted, Length } from '../../shelf/shelf'
import type { KeptShelf } from '../../state/shelf-state'
import type { Store } from '../../state/store'
import { formatLengthM } from '../../words/units'
import { NumberField } from '../number-field'
import { SelectField } from '../select-field'

type Kind = 'wires' | 'sets' | 'supplies' | 'cells'

const KINDS: { readonly [K in Kind]: string } = {
  wires: 'Wire',
  sets: 'Telephone',
  supplies: 'Supply, board or exchange',
  cells: 'Cells and batteries',
}
const ALSO: { readonly [N in keyof KeptShelf['also']]: string } = {
  reels: 'Reels',
  people: 'People',
}
const COUNT = { min: 0, max: 10_000, whole: true }
const LENGTH_M = { min: 1, max: 1e6 }

/** What lies on the shelf: each thing with its count, and a way to put one more on it. */
export function ShelfLists({ store }: { store: Store }) {
  const shelf = store.onShelf.value
  const names = namesOf(store)
  const system = store.units.value
  const set = (change: Partial<KeptShelf>) => {
    store.onShelf.value = { ...shelf, ...change }
    return []
  }
  const counted = (kind: 'sets' | 'supplies' | 'cells') =>
    shelf[kind].map((each) => ({
      key: `${kind} ${each.id}`,
      name: names[kind].get(each.id) ?? each.id,
      count: each.count,
      onCount: (count: number) =>
        set({ [kind]: shelf[kind].map((one) => (one === each ? { ...one, count } : one)) }),
      onAway: () => void set({ [kind]: shelf[kind].filter((one) => one !== each) }),
    }))
  const rows = [
    ...shelf.wires.map((each) => ({
      key: `wires ${each.wire} ${each.lengthM}`,
      name: `${names.wires.get(each.wire) ?? each.wire}, ${formatLengthM(each.lengthM, system)}`,
      count: each.count,
      onCount: (count: number) =>
        set({ wires: shelf.wires.map((one) => (one === each ? { ...one, count } : one)) }),
      onAway: () => void set({ wires: shelf.wires.filter((one) => one !== each) }),
    })),
    ...counted('sets'),
    ...counted('supplies'),
    ...counted('cells'),
  ]
  const { stock } = store.settled.value
  return (
    <section aria-label="On the shelf">
      <h2>On the shelf</h2>
      {store.onShelfFailure.value && <p class="fails">{store.onShelfFailure.value}</p>}
      {rows.length === 0 && <p class="soft">Nothing yet.</p>}
      <ul class="rows">
        {rows.map(({ key, name, count, onCount, onAway }) => (
          <li key={key}>
            <NumberField
              label={name}
              quantity="count"
              system={system}
              value={count}
              limit={COUNT}
              onCommit={onCount}
            />
            <button type="button" class="quiet" aria-label={`Remove ${name} from the shelf`} onClick={onAway}>
              Remove
            </button>
          </li>
        ))}
      </ul>
      <OneMore store={store} />
      <details class="on-demand">
        <summary>Also there: rods, reels, people</summary>
        {Object.entries(ALSO).map(([name, label]) => (
          <NumberField
            key={name}
            label={label}
            quantity="count"
            system={system}
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
      <PrintedList rows={rows} also={shelf.also} />
    </section>
  )
}

/** What comes out of the printer instead of the dialog. */
function PrintedList({
  rows,
  also,
}: {
  rows: readonly { readonly key: string; readonly name: string; readonly count: number }[]
  also: KeptShelf['also']
}) {
  const others = Object.entries(ALSO).flatMap(([name, label]) => {
    const count = also[name as keyof KeptShelf['also']]
    return count > 0 ? [{ key: name, name: label, count }] : []
  })
  return (
    <table class="printed-list" aria-hidden="true">
      <caption>On the shelf</caption>
      <tbody>
        {[...rows, ...others].map(({ key, name, count }) => (
          <tr key={key}>
            <td>{count} ×</td>
            <td>{name}</td>
            <td>☐</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function namesOf({ choices }: Store): { readonly [K in Kind]: ReadonlyMap<string, string> } {
  const by = (list: readonly { readonly id: string; readonly name: string }[]) =>
    new Map(list.map(({ id, name }) => [id, isolated(name)]))
  return {
    wires: by(choices.wires.value),
    sets: by(choices.sets.value),
    supplies: by(choices.supplies.value),
    cells: by(CELL_MASSES),
  }
}

/** What there is in the place of the plan's stock: a length that is on the shelf already is not counted twice. */
const withStock = (wires: readonly Length[], stock: readonly Length[]): readonly Length[] => [
  ...wires.filter(
    ({ wire, lengthM }) => !stock.some((each) => each.wire === wire && each.lengthM === lengthM),
  ),
  ...stock.map(({ wire, lengthM, count }) => ({ wire, lengthM, count })),
]

/** Puts one thing more on the shelf. */
function OneMore({ store }: { store: Store }) {
  const kind = useSignal<Kind>('wires')
  const chosen = useSignal<string | null>(null)
  const lengthM = useSignal(400)
  const count = useSignal(1)
  const options = [...namesOf(store)[kind.value]].map(([value, text]) => ({ value, text }))
  const id = options.find(({ value }) => value === chosen.value)?.value ?? options[0]!.value
  const add = () => {
    const shelf = store.onShelf.peek()
    store.onShelf.value =
      kind.peek() === 'wires'
        ? {
            ...shelf,
            wires: withLength(shelf.wires, { wire: id, lengthM: lengthM.peek(), count: count.peek() }),
          }
        : {
            ...shelf,
            [kind.peek()]: withCount(shelf[kind.peek() as 'sets'], { id, count: count.peek() }),
          }
  }
  return (
    <fieldset class="one-more">
      <legend>Put on the shelf</legend>
      <SelectField
        label="What"
        value={kind.value}
        options={Object.entries(KINDS).map(([value, text]) => ({ value: value as Kind, text }))}
        onCommit={(value) => {
          kind.value = value
          chosen.value = null
        }}
      />
      <SelectField
        label="Which"
        value={id}
        options={options}
        onCommit={(value) => {
          chosen.value = value
        }}
      />
      {kind.value === 'wires' && (
        <NumberField
          label="Length of each"
          quantity="lengthM"
          system={store.units.value}
          value={lengthM.value}
          limit={LENGTH_M}
          onCommit={(m) => {
            lengthM.value = m
            return []
          }}
        />
      )}
      <NumberField
        label="How many"
        quantity="count"
        system={store.units.value}
        value={count.value}
        limit={{ ...COUNT, min: 1 }}
        onCommit={(many) => {
          count.value = many
          return []
        }}
      />
      <button type="button" onClick={add}>
        Put it there
      </button>
    </fieldset>
  )
}

function withLength(wires: readonly Length[], one: Length): readonly Length[] {
  const there = wires.find(({ wire, lengthM }) => wire === one.wire && lengthM === one.lengthM)
  if (!there) return [...wires, one]
  return wires.map((each) => (each === there ? { ...each, count: each.count + one.count } : each))
}

function withCount(list: readonly Counted[], one: Counted): readonly Counted[] {
  const there = list.find(({ id }) => id === one.id)
  if (!there) return [...list, one]
  return list.map((each) => (each === there ? { ...each, count: each.count + one.count } : each))
}
