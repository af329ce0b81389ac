import { useSignal } from '@preact/signals'
import type { StationId } from '../../plan/id'
import { addLine } from '../../plan/line-edits'
import { type Plan, stationName } from '../../plan/plan'
import { rerouteLine, type Way } from '../../plan/route-edits'
import { newCircuitId, newLineId } from '../../state/new-id'
import type { Store } from '../../state/store'
import { wireUsedLast } from '../../state/used-last'
import { Question } from '../question'
import { SelectField } from '../select-field'
import { RouteOffer } from './route-offer'

/** A route from one station to another that no line leads to yet. */
export function RouteFrom({ store, from }: { store: Store; from: StationId }) {
  const plan = store.plan.value
  const chosen = useSignal<StationId | ''>('')
  const joined = new Set(
    [...plan.lines.values()].flatMap((line) =>
      line.from === from ? [line.to] : line.to === from ? [line.from] : [],
    ),
  )
  const others = [...plan.stations.values()].filter(({ id }) => id !== from && !joined.has(id))
  if (others.length === 0 || !store.groundWorker.value) return null
  const to = others.some(({ id }) => id === chosen.value) ? chosen.value : ''
  const lead = (before: Plan, way: Way) => {
    const line = newLineId(before)
    const drawn = addLine(before, {
      ...{ id: line, newCircuitId: newCircuitId(before), from, to: to as StationId },
      ...{ bends: way.bends, wire: wireUsedLast(store, before), lay: 'surface' },
    })
    return { plan: rerouteLine(drawn, line, way), line }
  }
  return (
    <Question ask="Which way to another station?">
      <SelectField
        label="To"
        value={to}
        options={[
          { value: '', text: 'choose a station' },
          ...others.map(({ id }) => ({ value: id, text: stationName(plan, id) })),
        ]}
        onCommit={(id) => {
          chosen.value = id
        }}
      />
      {to && <RouteOffer key={to} store={store} from={from} to={to} lead={lead} />}
    </Question>
  )
}
