import { verticesOf } from '../../plan/plan'
import { effect } from '../../state/steady-effect'
import { LAY_LETTERS } from '../../words/plan-words'
import { formatRunM } from '../../words/units'
import type { Bench } from '../bench'
import type { Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'
import { seenPart } from './leg-strokes'
import { around, type Box, placeNames } from './place-names'
import { TEXT_SCALE } from './text-scale'

const HEIGHT_PX = 21 * TEXT_SCALE
/** A digit's width at the label's size, px: the figures are tabular. */
const DIGIT_PX = 7.3 * TEXT_SCALE
const GAP_PX = 9

/** On the selected line, says of each leg how it is laid and how long it is. */
export function showLegLabels({ store, view, names }: Bench): () => void {
  const group = view.addGroup('leg-labels', 'signs-moving')
  const stop = effect(() => {
    view.frame.value
    const screen = view.screen.value
    const selection = store.selection.value
    const plan = store.plan.value
    const line = selection?.kind === 'line' ? plan.lines.get(selection.id) : undefined
    const measured = line && store.report.value.lines.find(({ id }) => id === line.id)
    if (selection?.kind !== 'line' || !line || !measured) {
      group.replaceChildren()
      return
    }
    const path = view.pathOf(verticesOf(plan, line))
    const labels = measured.legs.flatMap(({ lay, groundM }, i) => {
      const seen = seenPart(path[i]!, path[i + 1]!, screen)
      if (!seen) return []
      const text = `${LAY_LETTERS[lay]} · ${formatRunM(groundM, store.units.value)}`
      const [from, to] = seen
      const wide = Math.hypot(to.x - from.x, to.y - from.y) > widthOf(text) + 24
      const shown = selection.legs.includes(i) || (selection.legs.length === 0 && wide)
      return shown ? [{ id: String(i), text, candidates: placesBeside(from, to, widthOf(text)) }] : []
    })
    const places = placeNames(labels, names.value, [])
    group.replaceChildren(
      ...labels.map(({ id, text, candidates }) => labelIn(candidates[places.get(id) ?? 0]!, text)),
    )
  })
  return () => {
    stop()
    group.remove()
  }
}

const widthOf = (text: string): number => text.length * DIGIT_PX + 16

/** Beside the middle of what is seen of a leg, above it or else below, so far off that the label does not lie on the wire. */
function placesBeside(from: Point, to: Point, width: number): readonly Box[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1
  const turn = to.x >= from.x ? 1 : -1
  const up = { x: (turn * (to.y - from.y)) / length, y: (-turn * (to.x - from.x)) / length }
  const off = GAP_PX + (Math.abs(up.x) * width) / 2 + (Math.abs(up.y) * HEIGHT_PX) / 2
  return [off, -off].map((by) =>
    around({ x: (from.x + to.x) / 2 + up.x * by, y: (from.y + to.y) / 2 + up.y * by }, width, HEIGHT_PX),
  )
}

function labelIn({ left, top, right }: Box, text: string): SVGElement {
  const width = right - left
  const middle = { x: left + width / 2, y: top + HEIGHT_PX / 2 }
  const label = svgElement('g', {
    class: 'leg-label',
    transform: `translate(${middle.x.toFixed(1)} ${middle.y.toFixed(1)})`,
  })
  svgElement('rect', { x: -width / 2, y: -HEIGHT_PX / 2, width, height: HEIGHT_PX, rx: 3 }, label)
  const words = svgElement('text', { y: 4.5 * TEXT_SCALE, 'text-anchor': 'middle' }, label)
  words.textContent = text
  return label
}
