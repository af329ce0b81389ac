import type { CircuitId, LineId, StationId } from '../plan/id'
import { circuitName, lineName, type Plan, stationName } from '../plan/plan'
import { requestPlace } from '../state/requests'
import type { Selection } from '../state/selection'
import type { Store } from '../state/store'

interface Props {
  readonly store: Store
  /** Id of a line, station or circuit. */
  readonly where: string
  readonly legIndex?: number
  readonly position?: readonly [lonDeg: number, latDeg: number]
  /** On a line: how far from its start on the map, m. */
  readonly distanceM?: number
}

/** A way to the thing that a sentence is about, unless it is the one on show. */
export function ShowPlace({ store, where, legIndex, position, distanceM }: Props) {
  const thing = thingOf(store.plan.value, where, legIndex)
  const shown = store.selection.value
  const isShown = shown && `${shown.kind} ${shown.id}` === `${thing?.selection?.kind} ${thing?.selection?.id}`
  if (!thing || (isShown && !position)) return null
  return (
    <button
      type="button"
      class="quiet"
      aria-label={`Show it: ${thing.name}`}
      onClick={() => {
        store.selection.value = thing.selection
        if (distanceM !== undefined) store.cursor.value = { line: where as LineId, mapM: distanceM }
        if (position) requestPlace(position)
      }}
    >
      Show it
    </button>
  )
}

function thingOf(
  plan: Plan,
  where: string,
  legIndex: number | undefined,
): { readonly name: string; readonly selection: Selection } | undefined {
  const line = plan.lines.get(where as LineId)
  if (line) {
    const legs = legIndex === undefined ? [] : [legIndex]
    return { name: lineName(plan, line), selection: { kind: 'line', id: line.id, legs } }
  }
  const circuit = plan.circuits.get(where as CircuitId)
  if (circuit) return { name: circuitName(plan, circuit), selection: { kind: 'circuit', id: circuit.id } }
  const station = plan.stations.get(where as StationId)
  return station && { name: stationName(plan, where), selection: { kind: 'station', id: station.id } }
}
