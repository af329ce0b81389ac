import { batch, signal } from '@preact/signals'
import type { Position } from '../../geo/position'
import { HAZARDS } from '../../hazard/kinds'
import { addHazard } from '../../plan/hazard-edits'
import { newHazardId } from '../../state/new-id'
import { effect } from '../../state/steady-effect'
import type { Aim, Bench, MapTool } from '../bench'
import { showDraft } from '../layers/show-draft'

/** Draws a road, a water, a power line … corner by corner; closed on its first corner it is an area. */
export function hazardTool(bench: Bench): MapTool & { readonly remove: () => void } {
  const { store, view } = bench
  const corners = signal<readonly Position[]>([])
  const pointer = signal<Position | null>(null)
  const removeDrawing = showDraft(view, corners, pointer)

  const stopKeeping = effect(() => {
    const now = corners.value
    const hazard = bench.hazardKind.value
    if (now.length === 0 && store.underWay.peek()?.kind !== 'hazard') return
    store.underWay.value = now.length > 0 ? { kind: 'hazard', hazard, corners: now } : null
  })

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
    store.tell(`${capital(HAZARDS[hazard].word)} drawn`)
    return true
  }
  /** Ends it as its kind asks: what people keep out of is an area. */
  const endAsKind = (): boolean => {
    const isArea = HAZARDS[bench.hazardKind.peek()].endsAsArea && corners.peek().length >= 3
    return end(isArea ? 'area' : 'line')
  }
  const back = (): boolean => {
    const had = corners.peek().length > 0
    corners.value = corners.peek().slice(0, -1)
    return had
  }
  /** Puts the half-drawn hazard aside: undo, or the button that is told of, brings it back. */
  const cancel = (): boolean => {
    const now = corners.peek()
    drop()
    if (now.length === 0) return false
    const act = () =>
      batch(() => {
        store.tool.value = 'hazard'
        corners.value = now
      })
    store.tell('The half-drawn hazard is put aside', { words: 'Carry on', act })
    return true
  }

  return {
    takeUp: (what) => {
      if (what.kind !== 'hazard') return
      bench.hazardKind.value = what.hazard
      corners.value = what.corners
      store.tell('The hazard that was half drawn is taken up again', {
        words: 'Put aside',
        act: () => void cancel(),
      })
    },
    hint: () =>
      corners.value.length
        ? 'Click corners; double-click ends the line, the first corner closes an area'
        : 'Click along the road, the water, the power line …',
    steps: () =>
      corners.value.length
        ? [
            { words: 'Take back', act: back },
            { words: 'Put aside', act: cancel },
            ...(corners.value.length > 1 ? [{ words: 'Done', act: endAsKind }] : []),
            ...(corners.value.length > 2 ? [{ words: 'Close the area', act: () => end('area') }] : []),
          ]
        : [],
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
      if (corners.peek().length) endAsKind()
    },
    // Enter on the first corner closes an area, as a click there does.
    finish: (aim) => corners.peek().length > 0 && (isFirst(aim) ? end('area') : endAsKind()),
    back,
    cancel,
    forget: drop,
    remove: () => {
      removeDrawing()
      stopKeeping()
    },
  }
}

const capital = (word: string) => word.charAt(0).toUpperCase() + word.slice(1)
