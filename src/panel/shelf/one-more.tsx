import { useSignal } from '@preact/signals'
import type { Counted, Length } from '../../shelf/shelf'
import type { Store } from '../../state/store'
import { NumberField } from '../number-field'
import { SelectField, SelectFieldOf } from '../select-field'
import { COUNT } from './shelf-row'
import { KINDS, type Kind, namesOf } from './things'

const LENGTH_M = { min: 1, max: 1e6 }
/** How a length is made up: pairs that may be laid as one, or a single wire. */
const MAKE_UP = { one: 'One pair', two: 'Two pairs', four: 'Four pairs', single: 'One wire only, no pair' }
type MakeUp = keyof typeof MAKE_UP
const PAIRS: Readonly<Record<MakeUp, Pick<Length, 'pairs' | 'isSingle'>>> = {
  one: {},
  two: { pairs: 2 },
  four: { pairs: 4 },
  single: { isSingle: true },
}

/** Puts one thing more on the shelf. */
export function OneMore({ store }: { store: Store }) {
  const kind = useSignal<Kind>('wires')
  const chosen = useSignal<string | null>(null)
  const lengthM = useSignal(400)
  const makeUp = useSignal<MakeUp>('one')
  const count = useSignal(1)
  const options = [...namesOf(store)[kind.value]].map(([value, text]) => ({ value, text }))
  const id = options.find(({ value }) => value === chosen.value)?.value ?? options[0]!.value
  const add = () => {
    const shelf = store.onShelf.peek()
    const to = kind.peek()
    const many = count.peek()
    store.onShelf.value =
      to === 'wires'
        ? {
            ...shelf,
            wires: withLength(shelf.wires, {
              ...{ wire: id, lengthM: lengthM.peek(), count: many },
              ...PAIRS[makeUp.peek()],
            }),
          }
        : { ...shelf, [to]: withCount(shelf[to], { id, count: many }) }
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
        <>
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
          <SelectFieldOf
            label="Made up of"
            of={makeUp}
            options={Object.entries(MAKE_UP).map(([value, text]) => ({ value: value as MakeUp, text }))}
          />
        </>
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

/** What was measured is another thing than what was not. */
function withLength(wires: readonly Length[], one: Length): readonly Length[] {
  const there = wires.find(
    ({ wire, lengthM, pairs, isSingle, measured }) =>
      wire === one.wire &&
      lengthM === one.lengthM &&
      pairs === one.pairs &&
      isSingle === one.isSingle &&
      !measured,
  )
  if (!there) return [...wires, one]
  return wires.map((each) => (each === there ? { ...each, count: each.count + one.count } : each))
}

function withCount(list: readonly Counted[], one: Counted): readonly Counted[] {
  const there = list.find(({ id, measured }) => id === one.id && !measured)
  if (!there) return [...list, one]
  return list.map((each) => (each === there ? { ...each, count: each.count + one.count } : each))
}
