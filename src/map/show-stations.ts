import { computed, effect } from '@preact/signals'
import type { StationId } from '../plan/id'
import { type Plan, verticesOf } from '../plan/plan'
import type { Bench } from './bench'
import { failingStations } from './failing-stations'
import type { Point } from './map-view'
import { nameSide, type Side } from './name-side'
import { svgElement } from './svg-element'

/** Where a name stands to the symbol, and from which end it runs. */
const NAME_PLACES: Readonly<Record<Side, { x: number; y: number; anchor: string }>> = {
  above: { x: 0, y: -18, anchor: 'middle' },
  below: { x: 0, y: 26, anchor: 'middle' },
  right: { x: 21, y: 5, anchor: 'start' },
  left: { x: -21, y: 5, anchor: 'end' },
}

/** One station's symbol, and the state that it was drawn from. */
interface DrawnStation {
  readonly group: SVGGElement
  readonly name: SVGTextElement
  state: string
}

/** Keeps a terminal block with its name on the map for every station. */
export function showStations({ store, view, ghost }: Bench): () => void {
  const group = view.addGroup('stations')
  const drawn = new Map<StationId, DrawnStation>()
  const failing = computed(() => failingStations(store.plan.value, store.report.value))
  const supplied = computed(() => suppliedStations(store.plan.value))

  const stop = effect(() => {
    view.frame.value
    const { stations } = store.plan.value
    const hiddenId = ghost.value?.station ?? null
    for (const [id, { group: old }] of drawn) {
      if (stations.has(id) && id !== hiddenId) continue
      old.remove()
      drawn.delete(id)
    }
    const ways = leavingWays(store.plan.value, view.pathOf)
    const selection = store.selection.value
    for (const { id, name, position } of stations.values()) {
      if (id === hiddenId) continue
      const before = drawn.get(id)
      const symbol = before ?? newSymbol(group)
      drawn.set(id, symbol)
      const at = view.pointOf(position)
      const side = nameSide(at, ways.get(id) ?? [])
      const state = JSON.stringify([
        at.x.toFixed(1),
        at.y.toFixed(1),
        side,
        name,
        supplied.value.has(id),
        failing.value.has(id),
        selection?.kind === 'station' && selection.id === id,
      ])
      if (symbol.state === state) continue
      symbol.state = state
      const marks = [
        supplied.value.has(id) ? 'supplied' : '',
        failing.value.has(id) ? 'failing' : '',
        selection?.kind === 'station' && selection.id === id ? 'selected' : '',
      ]
      symbol.group.setAttribute('class', ['station', ...marks].filter(Boolean).join(' '))
      symbol.group.setAttribute('transform', `translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})`)
      const place = NAME_PLACES[side]
      symbol.name.setAttribute('x', String(place.x))
      symbol.name.setAttribute('y', String(place.y))
      symbol.name.setAttribute('text-anchor', place.anchor)
      symbol.name.textContent = name
    }
  })
  return () => {
    stop()
    group.remove()
  }
}

/** The terminal block with two posts; CSS shows the cross of the supply, the mark of a failure and the ring of the selection. */
function newSymbol(parent: SVGGElement): DrawnStation {
  const group = svgElement('g', {}, parent)
  svgElement('rect', { class: 'ring', x: -18, y: -14, width: 36, height: 28, rx: 8 }, group)
  svgElement('rect', { class: 'block', x: -13, y: -9, width: 26, height: 18, rx: 4 }, group)
  svgElement('circle', { class: 'post', cx: -5, cy: 0, r: 2.6 }, group)
  svgElement('circle', { class: 'post', cx: 5, cy: 0, r: 2.6 }, group)
  svgElement('path', { class: 'cross', d: 'M-6 0H6M0 -5V5' }, group)
  svgElement('path', { class: 'fail-mark', d: 'M9 -15h10v10h-10zM11.5 -12.5l5 5m0 -5l-5 5' }, group)
  const name = svgElement('text', { class: 'station-name' }, group)
  return { group, name, state: '' }
}

const suppliedStations = (plan: Plan): ReadonlySet<StationId> =>
  new Set([...plan.circuits.values()].flatMap(({ supply }) => (supply ? [supply.at] : [])))

/** For each station, the next vertex of every line that leaves it. */
function leavingWays(
  plan: Plan,
  pathOf: (path: ReturnType<typeof verticesOf>) => readonly Point[],
): ReadonlyMap<StationId, Point[]> {
  const ways = new Map<StationId, Point[]>()
  const note = (id: StationId, point: Point | undefined) => {
    if (point) ways.set(id, [...(ways.get(id) ?? []), point])
  }
  for (const line of plan.lines.values()) {
    const path = pathOf(verticesOf(plan, line))
    note(line.from, path[1])
    note(line.to, path.at(-2))
  }
  return ways
}
