import type { Position } from '../../geo/position'
import type { StationId } from '../../plan/id'
import type { Plan } from '../../plan/plan'
import { addStation } from '../../plan/station-edits'
import { newStationId } from '../../state/new-id'
import type { Bench, MapTool } from '../bench'
import { sceneOf } from './scene'
import { stationHere } from './whats-here'

/** Places a station at every click; a click on one that stands there selects it. */
export function stationTool(bench: Bench): MapTool {
  const { store } = bench
  return {
    hint: () => 'Click where a station stands',
    click: (aim) => {
      const there = stationHere(sceneOf(store.plan.peek(), bench), aim.point, aim.reachPx / 2)
      if (there) store.selection.value = { kind: 'station', id: there }
      else placeStation(bench, aim.position)
    },
  }
}

/** Puts a station on the plan and selects it. */
export function placeStation({ store, say }: Bench, position: Position): StationId {
  const id = newStationId(store.plan.peek())
  const name = freeStationName(store.plan.peek())
  store.edit((plan) => addStation(plan, { id, name, position }))
  store.selection.value = { kind: 'station', id }
  say(`${name} placed`)
  return id
}

/** The first of `Station 1`, `Station 2`… that no station bears. */
export function freeStationName(plan: Plan): string {
  const taken = new Set([...plan.stations.values()].map(({ name }) => name))
  let count = 1
  while (taken.has(`Station ${count}`)) count++
  return `Station ${count}`
}
