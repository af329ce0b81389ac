import type { StationId } from '../../plan/id'
import { lineName, type Plan, type Position } from '../../plan/plan'
import { wireInHand } from '../../state/wire-in-hand'
import type { Aim, Bench, HandTool } from '../bench'
import { beginLine, drawLine, type LineDraft, withBend, withoutLastBend } from './line-draft'
import { sceneOf } from './scene'
import { placeStation } from './station-tool'
import { stationHere } from './whats-here'

/** A station draws the end of a line from this much farther than other things are grasped. */
const SNAP = 1.5

/** Draws a line from station to station, with a bend at every click between. */
export function lineTool(bench: Bench): HandTool {
  const { store, view, ghost } = bench
  let draft: LineDraft | null = null

  /** The station that the aim snaps to; what stands at the pointer only for the while is none. */
  const stationAt = (aim: Aim): StationId | undefined => {
    const scene = sceneOf(store.settled.peek(), view)
    return stationHere(scene, aim.point, aim.reachPx * SNAP)
  }
  const inHand = (plan: Plan) => ({ wire: wireInHand(store, plan), lay: bench.lay.peek() })

  const begin = (start: StationId) => {
    const plan = store.settled.peek()
    draft = beginLine(plan, start)
    bench.say(`Line from ${plan.stations.get(start)?.name ?? ''}`)
  }

  const drop = () => {
    draft = null
    ghost.value = null
    store.cancel()
  }

  const end = (at: StationId | Position) => {
    if (!draft || at === draft.start) return
    const done = draft
    draft = null
    ghost.value = null
    store.edit((plan) => drawLine(plan, done, at, inHand(plan)))
    const plan = store.plan.peek()
    const line = plan.lines.get(done.lineId)
    if (!line) return
    store.selection.value = { kind: 'line', id: line.id, legs: [] }
    bench.say(`Line ${lineName(plan, line)} drawn`)
  }

  const hover = (aim: Aim) => {
    // Undo may have taken the station away from under the line.
    if (draft && !store.settled.peek().stations.has(draft.start)) drop()
    const snapped = stationAt(aim)
    view.container.dataset.over = snapped ? 'station' : ''
    if (!draft) return
    const now = draft
    ghost.value = { line: now.lineId, station: snapped ? null : now.endId }
    store.preview((plan) => drawLine(plan, now, snapped ?? aim.position, inHand(plan)))
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
        draft = withBend(draft, aim.position, bench.lay.peek())
        bench.say(`Bend ${draft.bends.length}`)
      }
      if (draft) hover(aim)
    },
    doubleClick: (aim) => {
      // The first of the two clicks has made a bend, unless it was the one that began the line.
      if (!draft || draft.bends.length === 0) return
      draft = withoutLastBend(draft)
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
        draft = withoutLastBend(draft)
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
