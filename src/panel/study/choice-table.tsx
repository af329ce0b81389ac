import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Choice } from '../../budget/choices'
import type { CircuitId } from '../../plan/id'
import { stationName } from '../../plan/plan'
import { distanceUnit, type UnitSystem } from '../../report/quantity-text'
import { NO_CHOICES, searchChoices } from '../../state/choice-search'
import type { Store } from '../../state/store'
import { checkWords } from '../circuit/circuit-words'
import { formatRunM } from '../format'

/** Three figures: a reach is known to 0.1 %, and nobody lays a wire to the metre by it. */
function formatReachM(reachM: number, system: UnitSystem): string {
  const { of, symbol } = distanceUnit(system)
  return `${Number(of(reachM).toPrecision(3))} ${symbol}`
}

/** What each wire and each supply would give a circuit: how far it could go, today and at worst. */
export function ChoiceTable({ store, id }: { store: Store; id: CircuitId }) {
  const choices = useSignal(NO_CHOICES)
  useEffect(() => searchChoices(store, id, choices), [])
  const { way, wires, supplies } = choices.value
  const plan = store.settled.value
  const circuit = plan.circuits.get(id)
  if (!circuit) return null
  if (!way) return <p role="status">Reckoning …</p>
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
    </>
  )
}

/** First what can do its work, then what rings, then what reaches farther. */
const better = (a: Choice, b: Choice): number =>
  Number(b.complete) - Number(a.complete) ||
  Number(b.rings) - Number(a.rings) ||
  b.worst.factor - a.worst.factor ||
  b.today.factor - a.today.factor

/** What ends the reach at worst, after what this choice lacks and others have. */
function limitWords(
  { complete, rings, worst }: Choice,
  list: readonly Choice[],
  nameOf: (station: string) => string,
): string {
  const lacks = [
    ...(!complete && list.some((other) => other.complete) ? ['not complete with it'] : []),
    ...(!rings && list.some((other) => other.rings) ? ['rings nothing'] : []),
  ]
  return [...lacks, ...(worst.check ? [checkWords(worst.check, nameOf)] : [])].join('; ')
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
  const far = ({ factor, check }: Choice['today']) => {
    if (!check) return 'no end found'
    return factor === 0 ? 'nowhere' : formatReachM(factor * longestM, store.units.value)
  }
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
        {list.toSorted(better).map((choice) => (
          <tr key={choice.id} class={isNow(choice.id) ? 'now' : undefined}>
            <th scope="row">
              {choice.name}
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
