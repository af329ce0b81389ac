import { signal } from '@preact/signals'
import type { Position } from '../../geo/position'
import type { StationId } from '../../plan/id'
import { type Lay, lineName, type Plan } from '../../plan/plan'
import { currentWire } from '../../state/current-wire'
import type { Aim, Bench, MapTool } from '../bench'
import { beginLine, drawLine, type LineDraft, withBend, withoutLastBend } from './line-draft'
import { sceneOf } from './scene'
import { placeStation } from './station-tool'
import { wayAhead, withWay } from './way-ahead'
import { stationHere } from './whats-here'

/** A station draws the end of a line from this much farther than other things are grasped. */
const SNAP = 1.5

const BACK_AT_START = 'The line starts here: it must end at another station'

/** Draws a line from station to station, with a bend at every click between. */
export function lineTool(bench: Bench): MapTool {
  const { store, view, ghost } = bench
  const ahead = wayAhead(bench)
  /** What is under way: the hint follows it. */
  const draft = signal<LineDraft | null>(null)
  /** The line is held over the station where it began. */
  const atStart = signal(false)
  let lastAim: Aim | null = null

  /** The station that the aim snaps to; what stands at the pointer only for the while is none. */
  const stationAt = (aim: Aim): StationId | undefined => {
    const scene = sceneOf(store.settled.peek(), bench)
    return stationHere(scene, aim.point, aim.reachPx * SNAP)
  }
  const wireAndLay = (plan: Plan, lay = bench.lay.peek()) => ({ wire: currentWire(store, plan), lay })

  /** With the shift key held, the line as it is suggested to go on from its last place; else as it is. */
  const withSuggestedWay = (now: LineDraft, { adding }: Aim): { draft: LineDraft; lay?: Lay } => {
    const way = adding && ahead.from(lastPlace(now))
    return way ? { draft: withWay(now, way), lay: way.lays.at(-1)! } : { draft: now }
  }
  const lastPlace = ({ start, bends }: LineDraft): Position =>
    bends.at(-1) ?? store.settled.peek().stations.get(start)!.position

  const begin = (start: StationId) => {
    const plan = store.settled.peek()
    draft.value = beginLine(plan, start)
    bench.say(`Line from ${plan.stations.get(start)?.name ?? ''}`)
  }

  const drop = () => {
    draft.value = null
    ghost.value = null
    store.cancel()
  }

  const end = (at: StationId | Position, aim: Aim) => {
    const now = draft.peek()
    if (!now) return
    if (at === now.start) {
      bench.say(BACK_AT_START)
      return
    }
    const { draft: done, lay } = withSuggestedWay(now, aim)
    draft.value = null
    ghost.value = null
    store.edit((plan) => drawLine(plan, done, at, wireAndLay(plan, lay)))
    const plan = store.plan.peek()
    const line = plan.lines.get(done.lineId)
    if (!line) return
    store.selection.value = { kind: 'line', id: line.id, legs: [] }
    bench.say(`Line ${lineName(plan, line)} drawn`)
  }

  const show = (aim: Aim) => {
    const now = draft.peek()
    // Undo may have taken the station away from under the line.
    if (now && !store.settled.peek().stations.has(now.start)) drop()
    const snapped = stationAt(aim)
    view.container.dataset.over = snapped ? 'station' : ''
    atStart.value = now !== null && snapped === now.start
    if (!now || draft.peek() !== now) return
    const { draft: shown, lay } = withSuggestedWay(now, aim)
    ghost.value = { line: now.lineId, station: snapped ? null : now.endId }
    store.preview((plan) => drawLine(plan, shown, snapped ?? aim.position, wireAndLay(plan, lay)))
  }

  /** Shows the line to the aim, and has a way sought to it where one is wished for. */
  const hover = (aim: Aim) => {
    lastAim = aim
    show(aim)
    const now = draft.peek()
    if (!now || !aim.adding) return
    const snapped = stationAt(aim)
    const to = (snapped && store.settled.peek().stations.get(snapped)?.position) ?? aim.position
    const showAgain = () => {
      if (lastAim?.adding) show(lastAim)
    }
    ahead.seek({ from: lastPlace(now), to, onFound: showAgain })
  }

  return {
    hint: () => {
      if (!draft.value) return 'Click the station where the line starts'
      if (atStart.value) return BACK_AT_START
      return 'Click bends, with Shift for a suggested way; a station, or a double click, ends it'
    },
    underWay: () => draft.value !== null,
    hover,
    click: (aim) => {
      const station = stationAt(aim)
      const now = draft.peek()
      if (!now) begin(station ?? placeStation(bench, aim.position))
      else if (station) end(station, aim)
      else {
        const { draft: shown, lay = bench.lay.peek() } = withSuggestedWay(now, aim)
        draft.value = withBend(shown, aim.position, lay)
        bench.say(`Bend ${shown.bends.length + 1}`)
      }
      if (draft.peek()) hover(aim)
    },
    doubleClick: (aim) => {
      const now = draft.peek()
      // The first of the two clicks has made a bend, unless it was the one that began the line.
      if (!now || now.bends.length === 0) return
      draft.value = withoutLastBend(now)
      end(stationAt(aim) ?? aim.position, aim)
    },
    finish: (aim) => {
      if (!draft.peek()) return false
      end(stationAt(aim) ?? aim.position, aim)
      return true
    },
    back: () => {
      const now = draft.peek()
      if (!now) return false
      if (now.bends.length === 0) drop()
      else {
        draft.value = withoutLastBend(now)
        bench.say('Bend taken back')
      }
      return true
    },
    cancel: () => {
      if (!draft.peek()) return false
      drop()
      bench.say('Line dropped')
      return true
    },
  }
}
