import { CELL_MASSES } from '../../catalog/built-in'
import { EARTH_RODS } from '../../catalog/soils'
import { isolated } from '../../isolated'
import type { MeasuredFigures } from '../../shelf/shelf'
import type { Store } from '../../state/store'
import { formatHeightM, formatLengthM, type Quantity } from '../../words/units'

export type Kind = 'wires' | 'sets' | 'supplies' | 'cells' | 'rods'

export const KINDS: { readonly [K in Kind]: string } = {
  wires: 'Wire',
  sets: 'Telephone',
  supplies: 'Supply, board or exchange',
  cells: 'Cells and batteries',
  rods: 'Earth rods',
}

/** What a meter may read of each kind of thing, by the member of its entry. */
export const READ_OF: {
  readonly [K in Kind]: readonly {
    readonly at: string
    readonly label: string
    readonly quantity: Quantity
  }[]
} = {
  wires: [{ at: 'loopOhmPerKm', label: 'Loop resistance', quantity: 'ohmPerKm' }],
  sets: [{ at: 'ringer.minVolts', label: 'Volts that just ring its bell', quantity: 'volt' }],
  supplies: [
    { at: 'volts', label: 'Volts that it gives', quantity: 'volt' },
    { at: 'ring.volts', label: 'Volts that it rings with', quantity: 'volt' },
  ],
  cells: [{ at: 'volts', label: 'Volts of each', quantity: 'volt' }],
  rods: [{ at: 'ohms', label: 'Resistance of each, where it is driven', quantity: 'ohm' }],
}

export type Names = { readonly [K in Kind]: ReadonlyMap<string, string> }

/** What each thing is called, by its id. */
export function namesOf({ choices, units }: Store): Names {
  const by = (list: readonly { readonly id: string; readonly name: string }[]) =>
    new Map(list.map(({ id, name }) => [id, isolated(name)]))
  return {
    wires: by(choices.wires.value),
    sets: by(choices.sets.value),
    supplies: by(choices.supplies.value),
    cells: by(CELL_MASSES),
    rods: by(
      EARTH_RODS.map(({ id, name, lengthM }) => ({
        id,
        name: `${name}, ${formatHeightM(lengthM, units.value)}`,
      })),
    ),
  }
}

/** One row of the shelf. */
export interface Row {
  readonly kind: Kind
  readonly key: string
  /** Of the entry; gone where the entry is. */
  readonly id: string
  readonly name: string
  readonly count: number
  readonly measured: MeasuredFigures | undefined
  readonly put: (change: { readonly count?: number; readonly measured?: MeasuredFigures }) => void
  readonly away: () => void
}

/** Everything on the shelf, row by row. */
export function rowsOf(store: Store): readonly Row[] {
  const shelf = store.onShelf.value
  const names = namesOf(store)
  const put = <T extends { readonly measured?: MeasuredFigures }>(
    kind: Kind,
    list: readonly T[],
    each: T,
    change: Parameters<Row['put']>[0] | null,
  ) => {
    const { measured: _, ...bare } = each
    const measured = change?.measured ?? each.measured
    const kept = measured && Object.keys(measured).length > 0 ? { measured } : {}
    const next = { ...bare, ...change, ...kept }
    if (Object.keys(kept).length === 0) delete (next as { measured?: MeasuredFigures }).measured
    store.onShelf.value = {
      ...store.onShelf.peek(),
      [kind]: change ? list.map((one) => (one === each ? next : one)) : list.filter((one) => one !== each),
    }
  }
  const counted = (kind: Exclude<Kind, 'wires'>): readonly Row[] =>
    shelf[kind].map((each, k) => ({
      ...{ kind, id: each.id, count: each.count, measured: each.measured },
      key: `${kind} ${each.id} ${k}`,
      name: names[kind].get(each.id) ?? each.id,
      put: (change) => put(kind, shelf[kind], each, change),
      away: () => put(kind, shelf[kind], each, null),
    }))
  return [
    ...shelf.wires.map((each, k): Row => {
      const { wire, lengthM, count, pairs = 1, isSingle, measured } = each
      const of = isSingle ? ', one wire only' : pairs > 1 ? `, ${pairs} pairs` : ''
      return {
        ...{ kind: 'wires', id: wire, count, measured },
        key: `wires ${wire} ${lengthM} ${k}`,
        name: `${names.wires.get(wire) ?? wire}, ${formatLengthM(lengthM, store.units.value)}${of}`,
        put: (change) => put('wires', shelf.wires, each, change),
        away: () => put('wires', shelf.wires, each, null),
      }
    }),
    ...counted('sets'),
    ...counted('supplies'),
    ...counted('cells'),
    ...counted('rods'),
  ]
}
