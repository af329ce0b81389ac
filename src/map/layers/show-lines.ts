import { effect } from '@preact/signals'
import type { Position } from '../../geo/position'
import type { LineId } from '../../plan/id'
import { type Line, type Plan, verticesOf } from '../../plan/plan'
import type { Bench } from '../bench'
import type { MapView, Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'
import { legStrokes } from './leg-strokes'

/** What is picked of a line. */
interface Marks {
  /** Null: the line is not selected; none: all of it is. */
  readonly legs: readonly number[] | null
  /** Its circuit is selected. */
  readonly inCircuit: boolean
  /** The bend in hand, or −1. */
  readonly bend: number
}

/** Everything that a drawn line depends on: when none of it has changed, the drawing stands. */
interface DrawnLine {
  readonly group: SVGGElement
  readonly line: Line
  readonly from: Position
  readonly to: Position
  readonly frame: number
  readonly marks: string
}

/** Legs shorter than this on the screen have no room for a handle at their middle, px. */
const LEAST_HANDLE_PX = 60

/** Draws every line by the lay of its legs, with a ring at each bend. */
export function showLines({ store, view, picked }: Bench): () => void {
  const group = view.addGroup('lines')
  const drawn = new Map<LineId, DrawnLine>()

  const stop = effect(() => {
    const plan = store.plan.value
    const selection = store.selection.value
    const frame = view.frame.value
    const hand = picked.value
    const circuitLines = (selection?.kind === 'circuit' && plan.circuits.get(selection.id)?.lines) || []
    for (const [id, { group: old }] of drawn) {
      if (plan.lines.has(id)) continue
      old.remove()
      drawn.delete(id)
    }
    for (const line of plan.lines.values()) {
      const from = plan.stations.get(line.from)!.position
      const to = plan.stations.get(line.to)!.position
      const legs = selection?.kind === 'line' && selection.id === line.id ? selection.legs : null
      const bend = hand?.kind === 'bend' && hand.line === line.id ? hand.index : -1
      const inCircuit = circuitLines.includes(line.id)
      const marks = `${legs?.join() ?? '-'} ${bend} ${inCircuit}`
      const before = drawn.get(line.id)
      const stands =
        before?.line === line &&
        before.from === from &&
        before.to === to &&
        before.frame === frame &&
        before.marks === marks
      if (stands) continue
      const lineGroup = before?.group ?? svgElement('g', {}, group)
      lineGroup.setAttribute('class', legs ? 'line selected' : 'line')
      lineGroup.replaceChildren(...strokesOf(view, plan, line, { legs, inCircuit, bend }))
      drawn.set(line.id, { group: lineGroup, line, from, to, frame, marks })
    }
  })
  return () => {
    stop()
    group.remove()
  }
}

/** From the ground up: paper under the wire, the glow of what is selected, the wire, its handles, its bends. */
function strokesOf(view: MapView, plan: Plan, line: Line, { legs, inCircuit, bend }: Marks): SVGElement[] {
  const path = view.pathOf(verticesOf(plan, line))
  const box = view.drawBox()
  const drawn = line.legs.map(({ lay }, i) => ({ lay, ...legStrokes(path[i]!, path[i + 1]!, lay, box) }))
  const isPicked = (leg: number) => inCircuit || (legs !== null && (legs.length === 0 || legs.includes(leg)))
  return [
    svgElement('path', { class: 'wire-halo', d: drawn.map(({ wire }) => wire).join('') }),
    ...drawn.flatMap(({ wire }, i) =>
      wire && isPicked(i) ? [svgElement('path', { class: 'leg-picked', d: wire })] : [],
    ),
    ...drawn.flatMap(({ lay, wire, ticks }) => [
      ...(wire ? [svgElement('path', { class: `wire wire-${lay}`, d: wire })] : []),
      ...(ticks ? [svgElement('path', { class: 'wire-ticks', d: ticks })] : []),
    ]),
    ...(legs ? handlesOf(path) : []),
    ...path.slice(1, -1).map((at, i) => bendRing(at, i === bend)),
  ]
}

function bendRing({ x, y }: Point, isPicked: boolean): SVGElement {
  const look = isPicked ? { class: 'bend picked', r: 7 } : { class: 'bend', r: 5 }
  return svgElement('circle', { ...look, cx: x.toFixed(1), cy: y.toFixed(1) })
}

const handlesOf = (path: readonly Point[]): SVGElement[] =>
  path.slice(1).flatMap((to, i) => {
    const from = path[i]!
    if (Math.hypot(to.x - from.x, to.y - from.y) < LEAST_HANDLE_PX) return []
    return [
      svgElement('circle', { class: 'leg-middle', cx: (from.x + to.x) / 2, cy: (from.y + to.y) / 2, r: 3 }),
    ]
  })
