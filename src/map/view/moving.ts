import { computed, type ReadonlySignal } from '@preact/signals'
import type { LineId, StationId } from '../../plan/id'
import type { Store } from '../../state/store'

/** What the hand has hold of, or changes: it is drawn above what stands, so that only it is painted again at every move. */
export interface Moving {
  readonly lines: ReadonlySet<LineId>
  readonly stations: ReadonlySet<StationId>
}

/** The selected line or station, and all that a drag has made other than it was. The same value as long as it is the same things. */
export function movingThings(store: Store): ReadonlySignal<Moving> {
  let last: Moving = { lines: new Set(), stations: new Set() }
  return computed(() => {
    const [plan, settled, selection] = [store.atHand.value, store.settled.value, store.selection.value]
    const lines = new Set<LineId>()
    const stations = new Set<StationId>()
    if (selection?.kind === 'line') lines.add(selection.id)
    if (selection?.kind === 'station') stations.add(selection.id)
    if (selection?.kind === 'several') {
      for (const id of selection.stations) stations.add(id)
      for (const id of selection.lines) lines.add(id)
    }
    if (plan.stations !== settled.stations)
      for (const station of plan.stations.values())
        if (settled.stations.get(station.id) !== station) stations.add(station.id)
    if (plan !== settled)
      for (const line of plan.lines.values())
        if (settled.lines.get(line.id) !== line || stations.has(line.from) || stations.has(line.to))
          lines.add(line.id)
    if (!isSame(lines, last.lines) || !isSame(stations, last.stations)) last = { lines, stations }
    return last
  })
}

const isSame = (a: ReadonlySet<unknown>, b: ReadonlySet<unknown>): boolean =>
  a.size === b.size && [...a].every((each) => b.has(each))
