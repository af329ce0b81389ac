import { signal } from '@preact/signals'
import type { Position } from '../../geo/position'
import { HAZARDS } from '../../hazard/kinds'
import { addHazard } from '../../plan/hazard-edits'
import { newHazardId } from '../../state/new-id'
import type { Aim, Bench, MapTool } from '../bench'
import { showDraft } from '../layers/show-draft'

/** Draws a road, a water, a power line … corner by corner; closed on its first corner it is an area. */
export function hazardTool(bench: Bench): MapTool & { readonly remove: () => void } {
  const { store, view } = bench
  const corners = signal<readonly Position[]>([])
  const pointer = signal<Position | null>(null)
  const remove = showDraft(view, corners, pointer)

  const drop = () => {
    corners.value = []
    pointer.value = null
  }

  const isFirst = (aim: Aim): boolean => {
    const [first] = corners.peek()
    if (!first || corners.peek().length < 3) return false
    const { x, y } = view.pointOf(first)
    return Math.hypot(x - aim.point.x, y - aim.point.y) <= aim.reachPx * 1.5
  }

  const end = (shape: 'line' | 'area'): boolean => {
    const vertices = corners.peek()
    const hazard = bench.hazardKind.peek()
    const id = newHazardId(store.plan.peek())
    const problems = store.tryEdit((plan) => addHazard(plan, { id, hazard, name: '', shape, vertices }))
    if (problems[0]) {
      bench.say(problems[0].message)
      return false
    }
    drop()
    store.selection.value = { kind: 'hazard', id }
    bench.say(`Hazard drawn: ${HAZARDS[hazard].word}`)
    return true
  }

  return {
    hint: () =>
      corners.value.length
        ? 'Click corners; double-click ends the line, the first corner closes an area'
        : 'Click along the road, the water, the power line …',
    underWay: () => corners.value.length > 0,
    hover: (aim) => {
      pointer.value = aim.position
      view.container.dataset.over = isFirst(aim) ? 'corner' : ''
    },
    click: (aim) => {
      if (isFirst(aim)) end('area')
      else {
        corners.value = [...corners.peek(), aim.position]
        bench.say(`Corner ${corners.peek().length}`)
      }
    },
    doubleClick: () => {
      if (corners.peek().length) end('line')
    },
    finish: () => corners.peek().length > 0 && end('line'),
    back: () => {
      const had = corners.peek().length > 0
      corners.value = corners.peek().slice(0, -1)
      return had
    },
    cancel: () => {
      const had = corners.peek().length > 0
      drop()
      return had
    },
    remove,
  }
}
