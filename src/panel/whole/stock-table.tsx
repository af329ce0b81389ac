import { useSignal } from '@preact/signals'
import { isolated } from '../../isolated'
import { LIMITS } from '../../plan/limits'
import type { Stock } from '../../plan/plan'
import { putStock, setStock } from '../../plan/settings-edits'
import type { Store } from '../../state/store'
import { formatLengthM } from '../../words/units'
import { NumberField } from '../number-field'
import { OnDemand } from '../question'
import { SelectField } from '../select-field'

/** The spools at hand. With none, as many standard spools as it takes. */
export function StockTable({ store }: { store: Store }) {
  const { stock } = store.plan.value
  const wires = store.catalog.value.wires
  const system = store.units.value
  return (
    <OnDemand
      title={
        stock.length === 0
          ? 'Spools in stock: none listed, so standard spools, as many as it takes'
          : 'Spools in stock'
      }
    >
      <ul class="rows">
        {stock.map((entry) => {
          const name = `${isolated(wires.get(entry.wire)?.name ?? entry.wire)}, ${formatLengthM(entry.lengthM, system)}`
          return (
            <li key={`${entry.wire} ${entry.lengthM}`}>
              <NumberField
                label={name}
                quantity="count"
                system={system}
                value={entry.count}
                limit={LIMITS.stockCount}
                onCommit={(count) => store.tryEdit((before) => putStock(before, { ...entry, count }))}
              />
              <button
                type="button"
                aria-label={`Take ${name} out of the stock`}
                onClick={() =>
                  void store.tryEdit((before) =>
                    setStock(
                      before,
                      before.stock.filter((each) => each !== entry),
                    ),
                  )
                }
              >
                Remove
              </button>
            </li>
          )
        })}
      </ul>
      <NewStock store={store} />
    </OnDemand>
  )
}

function NewStock({ store }: { store: Store }) {
  const wires = store.choices.wires.value
  const inUse = store.report.value.spools[0]?.wire
  const entry = useSignal<Stock>({ wire: inUse ?? wires[0]!.id, lengthM: 400, count: 1 })
  const system = store.units.value
  const set = (change: Partial<Stock>) => {
    entry.value = { ...entry.value, ...change }
    return []
  }
  const add = () =>
    void store.tryEdit((before) => {
      const { wire, lengthM, count } = entry.value
      const already = before.stock.find((each) => each.wire === wire && each.lengthM === lengthM)?.count ?? 0
      return putStock(store.withChosen(before, 'wires', wire), { wire, lengthM, count: count + already })
    })
  return (
    <fieldset>
      <legend>Add spools to the stock</legend>
      <SelectField
        label="Wire"
        value={entry.value.wire}
        options={wires.map(({ id, name }) => ({ value: id, text: isolated(name) }))}
        onCommit={(wire) => set({ wire })}
      />
      <NumberField
        label="Wire on each"
        quantity="lengthM"
        system={system}
        value={entry.value.lengthM}
        limit={{ ...LIMITS.stockLengthM, min: 1 }}
        onCommit={(lengthM) => set({ lengthM })}
      />
      <NumberField
        label="How many"
        quantity="count"
        system={system}
        value={entry.value.count}
        limit={{ ...LIMITS.stockCount, min: 1 }}
        onCommit={(count) => set({ count })}
      />
      <button type="button" onClick={add}>
        Add
      </button>
    </fieldset>
  )
}
