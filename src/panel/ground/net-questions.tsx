import { stationsOfCircuit } from '../../plan/circuit-topology'
import type { Circuit } from '../../plan/plan'
import type { Store } from '../../state/store'
import { formatCount } from '../../words/units'
import { loadWhenShown } from '../load-when-shown'
import { Question } from '../question'

const NetOffer = loadWhenShown(async () => (await import('./net-offer')).NetOffer)

/** Stations that no line reaches yet, and nets that would join them. */
export function UnjoinedStations({ store }: { store: Store }) {
  const plan = store.plan.value
  const joined = new Set([...plan.lines.values()].flatMap(({ from, to }) => [from, to]))
  const alone = [...plan.stations.keys()].filter((id) => !joined.has(id))
  if (alone.length < 2) return null
  return (
    <Question ask="How could they be joined?">
      <p>
        No line reaches {formatCount(alone.length, 'station')} yet. A tree takes the least wire, a star gives
        each a line of its own, with a board in its middle two speak while the others are left in peace, a
        ring still joins all when one line breaks.
      </p>
      <NetOffer store={store} stations={alone} />
    </Question>
  )
}

/** Other nets over the stations of a circuit. */
export function OtherNets({ store, circuit }: { store: Store; circuit: Circuit }) {
  const stations = stationsOfCircuit(store.plan.value, circuit)
  if (stations.length < 3) return null
  return (
    <Question ask="How else could it be joined?">
      <p>
        A tree takes the least wire, a star gives each a line of its own, a board in its middle rings only
        whom one wants, a ring outlives one break.
      </p>
      <NetOffer store={store} stations={stations} circuit={circuit.id} />
    </Question>
  )
}
