import { computed, effect } from '@preact/signals'
import type { Position } from '../../geo/position'
import type { StationId } from '../../plan/id'
import type { Plan } from '../../plan/plan'
import { failingStations } from '../../report/failing-stations'
import type { Bench } from '../bench'
import { svgElement } from '../view/svg-element'

/** One station's symbol, and the state that it was drawn from. */
interface DrawnStation {
  readonly group: SVGGElement
  position: Position | null
  frame: number
  marks: string
}

/** Keeps a terminal block on the map for every station. */
export function showStations({ store, view, ghost }: Bench): () => void {
  const group = view.addGroup('stations')
  const drawn = new Map<StationId, DrawnStation>()
  const failing = computed(() => failingStations(store.plan.value, store.report.value))
  const supplied = computed(() => suppliedStations(store.plan.value))

  const stop = effect(() => {
    const frame = view.frame.value
    const { stations } = store.plan.value
    const hiddenId = ghost.value?.station ?? null
    for (const [id, { group: old }] of drawn) {
      if (stations.has(id) && id !== hiddenId) continue
      old.remove()
      drawn.delete(id)
    }
    const selection = store.selection.value
    for (const { id, position } of stations.values()) {
      if (id === hiddenId) continue
      const symbol = drawn.get(id) ?? newSymbol(group)
      drawn.set(id, symbol)
      const marks = [
        supplied.value.has(id) ? ' supplied' : '',
        failing.value.has(id) ? ' failing' : '',
        selection?.kind === 'station' && selection.id === id ? ' selected' : '',
      ].join('')
      if (symbol.marks !== marks) symbol.group.setAttribute('class', `station${marks}`)
      symbol.marks = marks
      if (symbol.position === position && symbol.frame === frame) continue
      symbol.position = position
      symbol.frame = frame
      const { x, y } = view.pointOf(position)
      symbol.group.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`)
    }
  })
  return () => {
    stop()
    group.remove()
  }
}

/** The terminal block with two posts; CSS shows the cross of the supply, the mark of a failure and the ring of the selection. */
function newSymbol(parent: SVGGElement): DrawnStation {
  const group = svgElement('g', { class: 'station' }, parent)
  svgElement('rect', { class: 'ring', x: -18, y: -14, width: 36, height: 28, rx: 8 }, group)
  svgElement('rect', { class: 'block', x: -13, y: -9, width: 26, height: 18, rx: 4 }, group)
  svgElement('circle', { class: 'post', cx: -5, cy: 0, r: 2.6 }, group)
  svgElement('circle', { class: 'post', cx: 5, cy: 0, r: 2.6 }, group)
  svgElement('path', { class: 'cross', d: 'M-6 0H6M0 -5V5' }, group)
  svgElement('path', { class: 'fail-mark', d: 'M9 -15h10v10h-10zM11.5 -12.5l5 5m0 -5l-5 5' }, group)
  return { group, position: null, frame: -1, marks: '' }
}

const suppliedStations = (plan: Plan): ReadonlySet<StationId> =>
  new Set([...plan.circuits.values()].flatMap(({ supply }) => (supply ? [supply.at] : [])))
