import { isolated } from '../isolated'
import { removeHazard } from '../plan/hazard-edits'
import type { CircuitId, HazardId, LineId, StationId } from '../plan/id'
import { removeLine } from '../plan/line-edits'
import { withLinesOut } from '../plan/line-removal'
import { lineName, type Plan, stationName } from '../plan/plan'
import { removeSeveral, type Several } from '../plan/several-edits'
import { removeStation } from '../plan/station-edits'
import { removalSentence } from '../words/removal-words'
import { tongueOf } from '../words/tongue'
import { formatCount } from '../words/units'
import type { Store } from './store'

/** Removals as a person asks for them: one undo step each, and told with all that went along. */
function remove(
  store: Store,
  name: (plan: Plan) => string,
  asked: Parameters<typeof removalSentence>[3],
  change: (plan: Plan) => Plan,
): void {
  const before = store.settled.peek()
  const what = name(before)
  store.edit(change)
  const after = store.settled.peek()
  if (after !== before) store.tell(removalSentence(what, before, after, asked))
}

export const deleteLine = (store: Store, id: LineId): void =>
  remove(
    store,
    (plan) => `Line ${plan.lines.has(id) ? lineName(plan, plan.lines.get(id)!) : ''}`,
    'line',
    (plan) => removeLine(plan, id),
  )

export const deleteStation = (store: Store, id: StationId): void =>
  remove(
    store,
    (plan) => stationName(plan, id),
    'station',
    (plan) => removeStation(plan, id),
  )

export const deleteHazard = (store: Store, id: HazardId): void =>
  remove(
    store,
    (plan) => isolated(plan.hazards.get(id)?.name ?? '') || 'Hazard',
    'things',
    (plan) => removeHazard(plan, id),
  )

export const deleteSeveral = (store: Store, several: Several): void =>
  remove(
    store,
    () => formatCount(several.stations.length + several.lines.length, 'thing'),
    'things',
    (plan) => removeSeveral(plan, several),
  )

/** Its lines stay. */
export const endCircuit = (store: Store, id: CircuitId): void =>
  remove(
    store,
    (plan) => `Circuit ${tongueOf(plan, store.units.peek()).name(id)}`,
    'circuit',
    (plan) => withLinesOut(plan, new Set(plan.circuits.get(id)?.lines), id),
  )
