import { signal } from '@preact/signals'
import type { Plan } from '../../plan/plan'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import { boundsOf, meets, pathOfLine } from '../view/line-path'
import type { DrawBox, MapView, Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'
import { hazardLabel, type Label, stationLabel } from './name-labels'
import { around, type Box, placeNames, type Stretch } from './place-names'

/** Room that a station's symbol takes, px. */
const SYMBOL_PX = { width: 32, height: 24 }

/** Writes the names of stations and hazards in view where they cover least of the drawing. Stations that are gathered bear none. */
export function showNames({ store, view, ghost, names, moving, gathered }: Bench): () => void {
  const standing = texts(view.addGroup('names', 'signs'))
  const inHand = texts(view.addGroup('names', 'signs-moving'))
  /** Where each name stands, by its candidates; −1 for what bears its name though there is no room for it. */
  const places = signal<ReadonlyMap<string, number>>(new Map())
  let standingBoxes: readonly Box[] = []

  const heldLabels = (plan: Plan): Label[] =>
    [...moving.value.stations].flatMap((id) => {
      const station = id === ghost.value?.station ? undefined : plan.stations.get(id)
      return station ? [stationLabel(station, view.pointOf(station.position))] : []
    })
  const placed = (labels: readonly Label[]) => {
    // What is selected bears its name even where there is no room.
    const selectedId = store.selection.value?.id
    return labels.flatMap((label) => {
      const box = label.candidates[places.peek().get(label.id) ?? (label.id === selectedId ? 0 : -1)]
      return box ? [{ ...label, box }] : []
    })
  }

  const stopStanding = effect(() => {
    view.frame.value
    const plan = store.settled.value
    const alone = gathered.value.filter(({ stations }) => stations.length === 1)
    const labels = [
      ...alone.map(({ at, stations: [id] }) => stationLabel(plan.stations.get(id)!, at)),
      ...[...plan.hazards.values()].flatMap((hazard) => hazardLabel(hazard, view) ?? []),
    ]
    // While a hand drags, names keep their sides: nothing hops about, and every move is quick.
    if (!store.dragging.value) {
      const held = [...moving.value.stations].flatMap((id) => {
        const station = plan.stations.get(id)
        return station ? [view.pointOf(station.position)] : []
      })
      const symbols = [...gathered.value.map(({ at }) => at), ...held].map((at) =>
        around(at, SYMBOL_PX.width, SYMBOL_PX.height),
      )
      // In the order of the plan, so that no name hops about when another station is selected.
      const order = new Map([...plan.stations.keys()].map((id, i) => [id as string, i]))
      const all = [...heldLabels(plan), ...labels].sort(
        (a, b) => (order.get(a.id) ?? Infinity) - (order.get(b.id) ?? Infinity) || 0,
      )
      const { min, max } = view.screen.value
      const screen = { left: min.x, top: min.y, right: max.x, bottom: max.y }
      places.value = placeNames(all, symbols, stretchesOf(plan, view), screen)
    }
    const drawn = placed(labels)
    standingBoxes = drawn.map(({ box }) => box)
    standing.draw(drawn)
  })
  const stopInHand = effect(() => {
    view.frame.value
    places.value
    const drawn = placed(heldLabels(store.atHand.value))
    inHand.draw(drawn)
    names.value = [...standingBoxes, ...drawn.map(({ box }) => box)]
  })
  return () => {
    stopStanding()
    stopInHand()
    standing.remove()
    inHand.remove()
  }
}

/** The stretches of wire in view. */
function stretchesOf(plan: Plan, view: MapView): readonly Stretch[] {
  const box: DrawBox = view.drawBox()
  return [...plan.lines.values()].flatMap((line) => {
    const path: readonly Point[] = pathOfLine(view, plan, line)
    return meets(boundsOf(path), box) ? path.slice(1).map((to, i) => ({ from: path[i]!, to })) : []
  })
}

function lineSpan(words: string, i: number, lineUp: (part: SVGElement, words: string, i: number) => void) {
  const span = svgElement('tspan', {})
  lineUp(span, words, i)
  return span
}

/** A group of names, each written anew only where it is another or elsewhere. */
function texts(group: SVGGElement) {
  const drawn = new Map<string, { text: SVGTextElement; state: string }>()
  const draw = (labels: readonly (Label & { readonly box: Box })[]) => {
    const seen = new Set(labels.map(({ id }) => id))
    for (const [id, { text }] of drawn) {
      if (seen.has(id)) continue
      text.remove()
      drawn.delete(id)
    }
    for (const { id, lines, kind, box } of labels) {
      const state = `${box.left.toFixed(1)} ${box.bottom.toFixed(1)} ${lines.join(' ')}`
      const before = drawn.get(id)
      if (before?.state === state) continue
      const text = before?.text ?? svgElement('text', { class: kind, 'text-anchor': 'middle' }, group)
      const [x, bottom] = [((box.left + box.right) / 2).toFixed(1), box.bottom - 4]
      const lineUp = (part: SVGElement, words: string, i: number) => {
        const up = ((lines.length - 1 - i) * (box.bottom - box.top)) / lines.length
        part.setAttribute('x', x)
        part.setAttribute('y', (bottom - up).toFixed(1))
        if (part.textContent !== words) part.textContent = words
      }
      if (lines.length === 1) lineUp(text, lines[0]!, 0)
      else text.replaceChildren(...lines.map((words, i) => lineSpan(words, i, lineUp)))
      drawn.set(id, { text, state })
    }
  }
  return { draw, remove: () => group.remove() }
}
