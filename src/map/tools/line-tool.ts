import { batch, signal } from '@preact/signals'
import type { Position } from '../../geo/position'
import type { StationId } from '../../plan/id'
import type { Place } from '../../plan/place'
import { type Lay, type Plan, stationName } from '../../plan/plan'
import { effect } from '../../state/steady-effect'
import { equipmentUsedLast, wireUsedLast } from '../../state/used-last'
import type { Aim, Bench, MapTool } from '../bench'
import { showTail } from '../layers/show-tail'
import { drawnSentence } from './drawn-words'
import { askHowFar, howFarWords, stepOfHowFar } from './how-far-ahead'
import {
  beginLine,
  drawLine,
  isBack,
  type LineDraft,
  type LineMake,
  positionAt,
  stillStands,
  withBend,
  withoutLastBend,
} from './line-draft'
import { isAimedAt, placeUnder } from './place'
import { wayAhead } from './way-ahead'

const TAKEN_UP = 'The line that was half drawn is taken up again'
const BACK_AT_START = 'The line starts here: it must end at another station'

/** Draws a line from place to place, with a bend at every click between; then its net goes on by one station a click. */
export function lineTool(bench: Bench): MapTool & { readonly remove: () => void } {
  const { store, view, ghost } = bench
  const ahead = wayAhead(bench)
  /** What is under way: the hint follows it. */
  const draft = signal<LineDraft | null>(null)
  /** The line is held over the station where it began. */
  const atStart = signal(false)
  /** The station at the end of the line that was just drawn: a click on open ground carries the net on from there. */
  const tail = signal<StationId | null>(null)
  const pointer = signal<Position | null>(null)
  const stopTail = showTail(bench, tail, pointer)
  let lastAim: Aim | null = null

  const stopKeeping = effect(() => {
    const now = draft.value
    if (!now && store.underWay.peek()?.kind !== 'line') return
    store.underWay.value = now && { kind: 'line', start: now.start, bends: now.bends, lays: now.lays }
  })

  const makeOf = (plan: Plan, lay = bench.lay.peek()): LineMake => ({
    wire: wireUsedLast(store, plan),
    lay,
    ...equipmentUsedLast(store, plan),
  })
  const stopFar = askHowFar(bench, draft, makeOf)

  const withSuggestedWay = (now: LineDraft, aim: Aim) => ahead.along(now, lastPlace(now), aim)
  const placeOf = (place: Place): Position => positionAt(store.settled.peek(), place)
  const lastPlace = (now: LineDraft): Position => now.bends.at(-1) ?? placeOf(now.start)

  const begin = (start: Place) => {
    const plan = store.settled.peek()
    tail.value = null
    pointer.value = null
    draft.value = beginLine(plan, start)
    bench.say(`Line from ${start.kind === 'station' ? stationName(plan, start.id) : 'here'}`)
  }

  const drop = () => {
    draft.value = null
    ghost.value = null
    store.cancel()
  }

  const keep = (done: LineDraft, end: Place, lay?: Lay) => {
    batch(() => {
      draft.value = null
      ghost.value = null
      if (!store.mayEdit()) return
      store.edit((plan) => drawLine(plan, done, end, makeOf(plan, lay)))
      const plan = store.plan.peek()
      const line = plan.lines.get(done.lineId)
      if (!line) return
      store.selection.value = { kind: 'line', id: line.id, legs: [] }
      tail.value = line.to
      store.tell(drawnSentence(plan, line, [done.start, end]))
    })
  }

  const end = (place: Place, aim: Aim) => {
    const now = draft.peek()
    if (!now) return
    if (isBack(now, place)) return bench.say(BACK_AT_START)
    const { draft: done, lay } = withSuggestedWay(now, aim)
    keep(done, place, lay)
  }

  /** Ends the line at its last bend: what was clicked last. */
  const endAtBend = () => {
    const now = draft.peek()
    const last = now?.bends.at(-1)
    if (!now || !last) return
    keep(withoutLastBend(now), { kind: 'ground', position: [last[0], last[1]] }, now.lays.at(-1))
  }

  /** One station more at the end of the net. */
  const carryOn = (from: StationId, position: Aim['position']) =>
    keep(beginLine(store.settled.peek(), { kind: 'station', id: from }), { kind: 'ground', position })

  const show = (aim: Aim) => {
    const now = draft.peek()
    if (now && !stillStands(store.settled.peek(), now)) drop()
    const place = placeUnder(bench, aim)
    view.container.dataset.over = place.kind === 'ground' ? '' : 'station'
    atStart.value = now !== null && isBack(now, place)
    pointer.value = !now && tail.peek() && place.kind === 'ground' && !aim.touch ? aim.position : null
    if (!now || draft.peek() !== now) return
    const { draft: shown, lay } = withSuggestedWay(now, aim)
    ghost.value = { line: now.lineId, station: place.kind === 'ground' ? now.atEnd.station : null }
    store.preview((plan) => drawLine(plan, shown, place, makeOf(plan, lay)))
  }

  /** Shows the line to the aim, and has a way sought to it where one is wished for. */
  const hover = (aim: Aim) => {
    lastAim = aim
    show(aim)
    const now = draft.peek()
    if (!now || !aim.adding) return
    const to = placeOf(placeUnder(bench, aim))
    const showAgain = () => {
      if (lastAim?.adding) show(lastAim)
    }
    ahead.seek({ from: lastPlace(now), to, onFound: showAgain })
  }

  const back = (): boolean => {
    const now = draft.peek()
    if (!now) return false
    if (now.bends.length === 0) drop()
    else {
      draft.value = withoutLastBend(now)
      bench.say('Bend taken back')
      if (lastAim && !lastAim.touch) show(lastAim)
      else store.cancel()
    }
    return true
  }

  /** Puts the half-drawn line aside: undo, or the button that is told of, brings it back. */
  const cancel = (): boolean => {
    const now = draft.peek()
    const hadTail = tail.peek() !== null
    tail.value = null
    pointer.value = null
    if (!now) return hadTail
    drop()
    const act = () =>
      batch(() => {
        store.tool.value = 'line'
        draft.value = now
      })
    store.tell('The half-drawn line is put aside', { words: 'Carry on', act })
    return true
  }

  /** The line as far as its last bend: what there is to see of it while no hand is over the map. */
  const showStanding = (now: LineDraft) => {
    const last = now.bends.at(-1)
    if (!last) return
    const upToLast = withoutLastBend(now)
    const end: Place = { kind: 'ground', position: [last[0], last[1]] }
    ghost.value = { line: now.lineId, station: now.atEnd.station }
    store.preview((plan) => drawLine(plan, upToLast, end, makeOf(plan, now.lays.at(-1))))
  }

  return {
    takeUp: (what) => {
      if (what.kind !== 'line') return
      const begun = beginLine(store.settled.peek(), what.start)
      const now = { ...begun, bends: what.bends, lays: what.lays }
      draft.value = now
      showStanding(now)
      store.tell(TAKEN_UP, { words: 'Put aside', act: () => void cancel() })
    },
    hint: () => {
      if (atStart.value) return BACK_AT_START
      const far = howFarWords(store)
      if (far) return far
      if (draft.value?.bends.length)
        return 'Click on; Done or a double click ends it here, a station ends it there'
      if (draft.value) return 'Click where it bends or ends'
      if (tail.value) return 'Click where the next station of this net stands, or begin another line'
      return 'Click where the line starts: a station, a wire, or open ground'
    },
    underWay: () => draft.value !== null,
    steps: () => {
      if (!draft.value) return tail.value ? [{ words: 'Begin elsewhere', act: cancel }] : []
      return [
        { words: 'Take back', act: back },
        stepOfHowFar(store),
        { words: 'Put aside', act: cancel },
        ...(draft.value.bends.length ? [{ words: 'Done', act: endAtBend }] : []),
      ]
    },
    hover,
    leave: () => {
      pointer.value = null
    },
    click: (aim) => {
      const place = placeUnder(bench, aim)
      const now = draft.peek()
      const from = tail.peek()
      if (!now && from && place.kind === 'ground' && store.settled.peek().stations.has(from))
        carryOn(from, aim.position)
      else if (!now) begin(place)
      else if (place.kind !== 'ground') end(place, aim)
      else {
        const { draft: shown, lay = bench.lay.peek() } = withSuggestedWay(now, aim)
        draft.value = withBend(shown, aim.position, lay)
        bench.say(`Bend ${shown.bends.length + 1}`)
      }
      if (draft.peek()) hover(aim)
    },
    // The first of the two clicks has made a bend, unless it was the one that began or ended the line.
    doubleClick: endAtBend,
    finish: (aim) => {
      const now = draft.peek()
      if (!now) return false
      const place = placeUnder(bench, aim)
      const last = now.bends.at(-1)
      // Enter where the last bend was clicked ends the line there, with no leg of no length.
      if (last && place.kind === 'ground' && isAimedAt(view, aim, last)) endAtBend()
      else end(place, aim)
      return true
    },
    back,
    cancel,
    forget: () => {
      tail.value = null
      pointer.value = null
      if (draft.peek()) drop()
    },
    remove: () => {
      stopTail()
      stopFar()
      stopKeeping()
    },
  }
}
