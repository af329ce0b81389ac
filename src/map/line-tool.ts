import type { CircuitId, LineId, StationId } from '../plan/id'
import { addLine } from '../plan/line-edits'
import { lineName, type Plan, type Position } from '../plan/plan'
import { addStation } from '../plan/station-edits'
import { newCircuitId, newLineId, newStationId } from '../state/new-id'
import type { Aim, Bench, HandTool } from './bench'
import { sceneOf } from './scene'
import { freeStationName, placeStation } from './station-tool'
import { stationHere } from './whats-here'

/** A line under way. Its ids are fixed at the start, so that what is shown and what is kept are the same line. */
interface Draft {
  readonly start: StationId
  readonly lineId: LineId
  readonly circuitId: CircuitId
  /** Of the station that stands where the line ends on empty ground. */
  readonly endId: StationId
  bends: readonly Position[]
}

/** Draws a line from station to station, with a bend at every click between. */
export function lineTool(bench: Bench): HandTool {
  const { store, view, ghost } = bench
  let draft: Draft | null = null

  const stationAt = (aim: Aim): StationId | undefined => {
    const { endId } = draft ?? {}
    const scene = sceneOf(store.plan.peek(), view)
    return stationHere(
      { ...scene, stations: scene.stations.filter(({ id }) => id !== endId) },
      aim.point,
      aim.reachPx * 1.5,
    )
  }

  /** The plan with the line as it would be if it ended here. */
  const drawn = (
    plan: Plan,
    { start, lineId, circuitId, endId, bends }: Draft,
    end: StationId | Position,
  ): Plan => {
    const at =
      typeof end === 'string'
        ? plan
        : addStation(plan, { id: endId, name: freeStationName(plan), position: end })
    return addLine(at, {
      id: lineId,
      newCircuitId: circuitId,
      from: start,
      to: typeof end === 'string' ? end : endId,
      bends,
      wire: wireInHand(bench, plan),
      lay: bench.lay.peek(),
    })
  }

  const begin = (start: StationId) => {
    const plan = store.plan.peek()
    draft = {
      start,
      lineId: newLineId(plan),
      circuitId: newCircuitId(plan),
      endId: newStationId(plan),
      bends: [],
    }
    bench.say(`Line from ${nameOf(plan, start)}`)
  }

  const drop = () => {
    draft = null
    ghost.value = null
    store.cancel()
  }

  const end = (at: StationId | Position) => {
    if (!draft || at === draft.start) return
    const { lineId } = draft
    const done = draft
    draft = null
    ghost.value = null
    store.edit((plan) => drawn(plan, done, at))
    const plan = store.plan.peek()
    const line = plan.lines.get(lineId)
    if (!line) return
    store.selection.value = { kind: 'line', id: lineId, legs: [] }
    bench.say(`Line ${lineName(plan, line)} drawn`)
  }

  const hover = (aim: Aim) => {
    // Undo may have taken the station away from under the line.
    if (draft && !store.settled.peek().stations.has(draft.start)) drop()
    if (!draft) {
      view.container.dataset.over = stationAt(aim) ? 'station' : ''
      return
    }
    const now = draft
    const snapped = stationAt(aim)
    view.container.dataset.over = snapped ? 'station' : ''
    ghost.value = { line: now.lineId, station: snapped ? null : now.endId }
    store.preview((plan) => drawn(plan, now, snapped ?? aim.position))
  }

  return {
    hint: () =>
      draft
        ? 'Click bends; click a station, or double-click open ground, to end'
        : 'Click the station where the line starts',
    underWay: () => draft !== null,
    hover,
    click: (aim) => {
      const station = stationAt(aim)
      if (!draft) begin(station ?? placeStation(bench, aim.position))
      else if (station) end(station)
      else {
        draft.bends = [...draft.bends, aim.position]
        bench.say(`Bend ${draft.bends.length}`)
      }
      if (draft) hover(aim)
    },
    doubleClick: (aim) => {
      // The first of the two clicks has made a bend, unless it was the one that began the line.
      if (!draft || draft.bends.length === 0) return
      draft.bends = draft.bends.slice(0, -1)
      end(stationAt(aim) ?? aim.position)
    },
    finish: (aim) => {
      if (!draft) return false
      end(stationAt(aim) ?? aim.position)
      return true
    },
    back: () => {
      if (!draft) return false
      if (draft.bends.length === 0) drop()
      else {
        draft.bends = draft.bends.slice(0, -1)
        bench.say('Bend taken back')
      }
      return true
    },
    cancel: () => {
      if (!draft) return false
      drop()
      bench.say('Line dropped')
      return true
    },
  }
}

const nameOf = (plan: Plan, id: StationId): string => plan.stations.get(id)?.name ?? ''

/** The wire that was drawn last; on a plan without lines, the first of the catalog. */
function wireInHand({ store }: Bench, plan: Plan): string {
  const last = [...plan.lines.values()].at(-1)?.wire
  const [first] = store.catalog.peek().wires.keys()
  return last ?? first ?? ''
}
