import { standAt } from '../../measure/stand-at'
import { setSet } from '../../plan/circuit-edits'
import { circuitsOfLine } from '../../plan/circuit-topology'
import { lastSetOf } from '../../plan/equip-line'
import type { Place } from '../../plan/place'
import { type Plan, stationName } from '../../plan/plan'
import { newLineId, newStationId } from '../../state/new-id'
import { equipmentUsedLast } from '../../state/used-last'
import type { Bench, MapTool } from '../bench'
import { placeUnder } from './place'

/** Places a station at every click, on open ground or on the wire; a click on one that stands there selects it. */
export function stationTool(bench: Bench): MapTool {
  const { store } = bench
  return {
    hint: () => 'Click where a station stands; on a wire it joins the line',
    hover: (aim) => {
      bench.view.container.dataset.over = placeUnder(bench, aim, 0.5).kind === 'ground' ? '' : 'station'
    },
    click: (aim) => {
      const place = placeUnder(bench, aim, 0.5)
      if (place.kind === 'station') store.selection.value = { kind: 'station', id: place.id }
      else placeStation(bench, place)
    },
  }
}

/** Puts a station on the plan and selects it. One on a wire taps it, with a telephone of the kind that its circuit has. */
export function placeStation({ store }: Bench, place: Exclude<Place, { kind: 'station' }>): void {
  const before = store.settled.peek()
  const ids = { station: newStationId(before), secondHalf: newLineId(before) }
  const { set } = equipmentUsedLast(store, before)
  if (!store.mayEdit()) return
  store.edit((plan) => withTelephone(standAt(plan, place, ids).plan))
  store.selection.value = { kind: 'station', id: ids.station }
  const name = stationName(store.settled.peek(), ids.station)
  store.tell(place.kind === 'wire' ? `${name} placed and joined to the wire` : `${name} placed`)

  function withTelephone(plan: Plan): Plan {
    const circuits = place.kind === 'wire' ? circuitsOfLine(plan, place.line) : []
    const [circuit] = circuits
    const kind = circuit && (lastSetOf(circuit) ?? set)
    // Of several circuits no hand can mean one.
    return circuits.length === 1 && kind ? setSet(plan, circuit!.id, ids.station, kind) : plan
  }
}
