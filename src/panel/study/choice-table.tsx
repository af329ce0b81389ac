import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Choice } from '../../budget/choices'
import { undirected } from '../../isolated'
import type { CircuitId } from '../../plan/id'
import { stationName } from '../../plan/plan'
import { NO_CHOICES, searchChoices } from '../../state/choice-search'
import type { Store } from '../../state/store'
import { betterChoice, limitWords, reachWords } from '../../words/choice-words'
import { formatRunM } from '../../words/units'

/** What each wire and each supply would give a circuit: how far it could go, today and at worst. */
export function ChoiceTable({ store, id }: { store: Store; id: CircuitId }) {
  const choices = useSignal(NO_CHOICES)
  useEffect(() => searchChoices(store, id, choices), [])
  const { way, wires, supplies, failure } = choices.value
  const plan = store.settled.value
  const circuit = plan.circuits.get(id)
  if (!circuit) return null
  const refusal = failure && (
    <p class="fails" role="alert">
      {failure}
    </p>
  )
  if (!way) return refusal || <p role="status">Working it out …</p>
  const nameOf = (station: string) => stationName(plan, station)
  const used = new Set(circuit.lines.map((line) => plan.lines.get(line)?.wire))
  const table = (caption: string, list: readonly Choice[], isNow: (id: string) => boolean) => (
    <Choices store={store} caption={caption} list={list} longestM={way.wireM} isNow={isNow} />
  )
  return (
    <>
      <p class="soft">
        Wire from {nameOf(way.from)} to {nameOf(way.to)}, the longest way, if all lines grew together until
        the first check fails. It is {formatRunM(way.wireM, store.units.value)} now.
      </p>
      {table('One wire on every line', wires, (wire) => used.size === 1 && used.has(wire))}
      {supplies.length > 0 &&
        table('Each supply where yours stands', supplies, (supply) => supply === circuit.supply?.type)}
      {refusal}
    </>
  )
}

interface Props {
  readonly store: Store
  readonly caption: string
  readonly list: readonly Choice[]
  readonly longestM: number
  readonly isNow: (id: string) => boolean
}

function Choices({ store, caption, list, longestM, isNow }: Props) {
  const plan = store.settled.value
  const far = (reach: Choice['today']) => reachWords(reach, longestM, store.units.value)
  return (
    <table class="choices">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Choice, and what fails first at worst</th>
          <th scope="col">Today</th>
          <th scope="col">At worst</th>
        </tr>
      </thead>
      <tbody>
        {list.toSorted(betterChoice).map((choice) => (
          <tr key={choice.id} class={isNow(choice.id) ? 'now' : undefined}>
            <th scope="row">
              <bdi>{undirected(choice.name)}</bdi>
              {isNow(choice.id) && ' (yours now)'}
              <span class="soft">{limitWords(choice, list, (station) => stationName(plan, station))}</span>
            </th>
            <td>{far(choice.today)}</td>
            <td>{far(choice.worst)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
