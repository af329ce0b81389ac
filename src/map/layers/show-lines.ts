import { trunkLines } from '../../budget/trunk-ends'
import type { LineId } from '../../plan/id'
import type { Line, Plan } from '../../plan/plan'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import { boundsOf, meets, pathOfLine } from '../view/line-path'
import type { MapView, Point } from '../view/map-view'
import { showWithin, svgElement } from '../view/svg-element'
import { type LineLook, lineStrokes } from './line-strokes'

/** Everything that a drawn line depends on: when none of it has changed, the drawing stands. */
interface DrawnLine {
  readonly group: SVGGElement
  readonly path: readonly Point[]
  readonly line: Line
  readonly look: string
}

/** Draws every line by the lay of its legs; what the hand has hold of above the others, with a ring at each bend. */
export function showLines({ store, view, picked, moving }: Bench): () => void {
  const standing = lineDrawings(view, view.addGroup('lines'))
  const inHand = lineDrawings(view, view.addGroup('lines', 'wire-moving'))

  const stopStanding = effect(() => {
    view.frame.value
    const [plan, held, selection] = [store.settled.value, moving.value.lines, store.selection.value]
    const inCircuit = circuitLines(plan, selection)
    const trunks = trunkLines(plan, store.catalog.value)
    standing.draw(
      plan,
      [...plan.lines.values()].filter(({ id }) => !held.has(id)),
      ({ id }) => ({ legs: null, bend: -1, inCircuit: inCircuit.has(id), isTrunk: trunks.has(id) }),
    )
  })
  const stopInHand = effect(() => {
    view.frame.value
    const [plan, held, selection, hand] = [
      store.atHand.value,
      moving.value.lines,
      store.selection.value,
      picked.value,
    ]
    const inCircuit = circuitLines(plan, selection)
    const trunks = trunkLines(plan, store.catalog.value)
    inHand.draw(
      plan,
      [...held].flatMap((id) => plan.lines.get(id) ?? []),
      ({ id }) => ({
        legs: pickedLegs(selection, id),
        bend: hand?.kind === 'bend' && hand.line === id ? hand.index : -1,
        inCircuit: inCircuit.has(id),
        isTrunk: trunks.has(id),
      }),
    )
  })
  return () => {
    stopStanding()
    stopInHand()
    standing.remove()
    inHand.remove()
  }
}

/** The legs that are picked of a selected line, none for the line as a whole; null where it is not selected. */
function pickedLegs(selection: Bench['store']['selection']['value'], id: LineId): readonly number[] | null {
  if (selection?.kind === 'several') return selection.lines.includes(id) ? [] : null
  return selection?.kind === 'line' && selection.id === id ? selection.legs : null
}

const circuitLines = (plan: Plan, selection: Bench['store']['selection']['value']): ReadonlySet<LineId> =>
  new Set(selection?.kind === 'circuit' ? plan.circuits.get(selection.id)?.lines : [])

/** A group of lines, each drawn anew only where it or its look is another. */
function lineDrawings(view: MapView, group: SVGGElement) {
  const drawn = new Map<LineId, DrawnLine>()
  const draw = (plan: Plan, lines: readonly Line[], lookOf: (line: Line) => LineLook) => {
    const box = view.drawBox()
    const seen = new Set<LineId>()
    const added = document.createDocumentFragment()
    for (const line of lines) {
      const path = pathOfLine(view, plan, line)
      if (!meets(boundsOf(path), box)) continue
      seen.add(line.id)
      const own = lookOf(line)
      const look = `${own.legs?.join() ?? '-'} ${own.bend} ${own.inCircuit} ${own.isTrunk}`
      const before = drawn.get(line.id)
      if (before?.line === line && before.path === path && before.look === look) continue
      const lineGroup = before?.group ?? svgElement('g', {})
      if (before?.look !== look) lineGroup.setAttribute('class', own.legs ? 'line selected' : 'line')
      showWithin(lineGroup, lineStrokes(line, path, own, box))
      if (!before) added.append(lineGroup)
      drawn.set(line.id, { group: lineGroup, line, path, look })
    }
    for (const [id, { group: old }] of drawn) {
      if (seen.has(id)) continue
      old.remove()
      drawn.delete(id)
    }
    if (added.firstChild) group.append(added)
  }
  return { draw, remove: () => group.remove() }
}
