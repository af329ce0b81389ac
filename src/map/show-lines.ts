import { effect } from '@preact/signals'
import type { LineId } from '../plan/id'
import { type Line, type Plan, type Position, verticesOf } from '../plan/plan'
import type { Bench, Picked } from './bench'
import { legStrokes } from './leg-strokes'
import { svgElement } from './svg-element'

/** Everything that a drawn line depends on: when none of it has changed, the drawing stands. */
interface DrawnLine {
  readonly group: SVGGElement
  readonly line: Line
  readonly from: Position
  readonly to: Position
  readonly frame: number
  readonly picked: string
}

/** Draws every line by the lay of its legs, with a ring at each bend. */
export function showLines({ store, view, picked }: Bench): () => void {
  const group = view.addGroup('lines')
  const drawn = new Map<LineId, DrawnLine>()

  const stop = effect(() => {
    const plan = store.plan.value
    const selection = store.selection.value
    const frame = view.frame.value
    for (const [id, { group: old }] of drawn) {
      if (plan.lines.has(id)) continue
      old.remove()
      drawn.delete(id)
    }
    for (const line of plan.lines.values()) {
      const from = plan.stations.get(line.from)!.position
      const to = plan.stations.get(line.to)!.position
      const legs = selection?.kind === 'line' && selection.id === line.id ? selection.legs : null
      const mark = pickedMark(line, legs, picked.value)
      const before = drawn.get(line.id)
      const stands =
        before?.line === line &&
        before.from === from &&
        before.to === to &&
        before.frame === frame &&
        before.picked === mark
      if (stands) continue
      const lineGroup = before?.group ?? svgElement('g', {}, group)
      lineGroup.setAttribute('class', legs ? 'line selected' : 'line')
      lineGroup.replaceChildren(...strokesOf(plan, line))
      drawn.set(line.id, { group: lineGroup, line, from, to, frame, picked: mark })
    }
  })

  const strokesOf = (plan: Plan, line: Line): SVGElement[] => {
    const path = view.pathOf(verticesOf(plan, line))
    const box = view.drawBox()
    const selection = store.selection.peek()
    const selected = selection?.kind === 'line' && selection.id === line.id ? selection : null
    const legs = line.legs.map(({ lay }, i) => ({ lay, ...legStrokes(path[i]!, path[i + 1]!, lay, box) }))
    const halo = svgElement('path', { class: 'wire-halo', d: legs.map(({ wire }) => wire).join('') })
    const underlay = selected
      ? legs.filter((leg, i) => leg.wire && (selected.legs.length === 0 || selected.legs.includes(i)))
      : []
    const wires = legs.flatMap(({ lay, wire, ticks }) => [
      ...(wire ? [svgElement('path', { class: `wire wire-${lay}`, d: wire })] : []),
      ...(ticks ? [svgElement('path', { class: 'wire-ticks', d: ticks })] : []),
    ])
    const hand = picked.peek()
    const bends = path.slice(1, -1).map(({ x, y }, i) => {
      const isPicked = hand?.kind === 'bend' && hand.line === line.id && hand.index === i
      return svgElement('circle', {
        class: isPicked ? 'bend picked' : 'bend',
        cx: x.toFixed(1),
        cy: y.toFixed(1),
        r: isPicked ? 7 : 5,
      })
    })
    const middles = selected
      ? line.legs.flatMap((_, i) => {
          const [a, b] = [path[i]!, path[i + 1]!]
          if (Math.hypot(b.x - a.x, b.y - a.y) < 60) return []
          return [
            svgElement('circle', { class: 'leg-middle', cx: (a.x + b.x) / 2, cy: (a.y + b.y) / 2, r: 4 }),
          ]
        })
      : []
    return [
      halo,
      ...underlay.map(({ wire }) => svgElement('path', { class: 'leg-picked', d: wire })),
      ...wires,
      ...middles,
      ...bends,
    ]
  }

  return () => {
    stop()
    group.remove()
  }
}

const pickedMark = (line: Line, legs: readonly number[] | null, picked: Picked): string =>
  `${legs ? `legs ${legs.join()}` : ''}${picked?.kind === 'bend' && picked.line === line.id ? ` bend ${picked.index}` : ''}`
