import type { CircuitId, LineId, StationId } from '../plan/id'
import { lineName, type Plan, stationName } from '../plan/plan'
import type { Caution } from '../report/caution'
import { requestPlace } from '../state/requests'
import type { Selection, Store } from '../state/store'
import { cautionText } from '../words/caution-words'

/** What could hurt someone, in the report's own words: first what holds for a place, then what holds everywhere. */
export function CautionList({ store, cautions }: { store: Store; cautions: readonly Caution[] }) {
  if (cautions.length === 0)
    return (
      <p>
        Nothing that is drawn yet. The local code governs all work on lines; where it asks for a licensed
        person, get one.
      </p>
    )
  const ordered = [...cautions.filter((each) => each.where), ...cautions.filter((each) => !each.where)]
  return (
    <ul class="cautions">
      {ordered.map((caution) => {
        const text = cautionText(caution, store.tongue.value)
        return (
          <li key={`${caution.code} ${caution.where} ${text}`}>
            {text}
            {caution.source && <span class="soft source"> Source: {caution.source}</span>}
            <ShowPlace store={store} caution={caution} />
          </li>
        )
      })}
    </ul>
  )
}

/** A way to the thing that a caution is about, unless it is the one on show. */
function ShowPlace({ store, caution }: { store: Store; caution: Caution }) {
  const place = placeOf(store.plan.value, caution)
  const shown = store.selection.value
  const isShown = shown && `${shown.kind} ${shown.id}` === `${place?.selection?.kind} ${place?.selection?.id}`
  if (!place || (isShown && !caution.place)) return null
  return (
    <button
      type="button"
      class="quiet"
      aria-label={`Show ${place.name}`}
      onClick={() => {
        store.selection.value = place.selection
        if (caution.place) {
          store.cursor.value = { line: caution.where as LineId, mapM: caution.place.distanceM }
          requestPlace(caution.place.position)
        }
      }}
    >
      Show it
    </button>
  )
}

function placeOf(
  plan: Plan,
  { where, place }: Caution,
): { readonly name: string; readonly selection: Selection } | undefined {
  const line = plan.lines.get(where as LineId)
  if (line) {
    const legs = place ? [place.legIndex] : []
    return { name: lineName(plan, line), selection: { kind: 'line', id: line.id, legs } }
  }
  const circuit = plan.circuits.get(where as CircuitId)
  if (circuit) return { name: circuit.name, selection: { kind: 'circuit', id: circuit.id } }
  const station = plan.stations.get(where as StationId)
  return station && { name: stationName(plan, where), selection: { kind: 'station', id: station.id } }
}
