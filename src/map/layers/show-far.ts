import { signal } from '@preact/signals'
import './far.css'
import type { Position } from '../../geo/position'
import type { FarLimit } from '../../report/further-set'
import { effect } from '../../state/steady-effect'
import { farLabel } from '../../words/far-words'
import { tongueOf } from '../../words/tongue'
import type { Bench } from '../bench'
import { boundsOf, isIn } from '../view/line-path'
import type { MapView, Point } from '../view/map-view'
import { pathData } from '../view/path-data'
import { svgElement } from '../view/svg-element'

/** Which way from the middle the label of each outline stands, so that they keep off each other. */
const SIDES: Readonly<Record<FarLimit, Point>> = {
  today: { x: 0, y: -1 },
  worst: { x: 1, y: 0.4 },
  nine: { x: -0.6, y: 1 },
  stock: { x: -1, y: -0.4 },
}
/** An outline so narrow is told in the panel alone, px. */
const SMALL_PX = 120
/** A label keeps so far inside the screen, px: at the top, below the bar. */
const INSIDE = { x: 80, top: 90, bottom: 60 }

/** Draws the ground on which one telephone more could stand; who reckons it is fetched when it is first asked. */
export function showFar({ store, view }: Bench): () => void {
  const group = view.addGroup('far', 'wire', 'hazards')
  const labels = view.addGroup('far-labels', 'signs')
  const asks = signal(false)
  let stopSearch: (() => void) | undefined
  let isGone = false
  const stopAsking = effect(() => {
    if (store.farAsked.value || store.farDrawn.value) asks.value = true
  })
  const stopFetching = effect(() => {
    if (!asks.value) return
    void import('../../state/far-search').then(({ searchFar }) => {
      if (!isGone) stopSearch ??= searchFar(store)
    })
  })
  const stop = effect(() => {
    view.frame.value
    view.screen.value
    const far = store.far.value
    const found = far?.found
    group.classList.toggle('under-way', far?.isUnderWay === true)
    if (!far || !found) {
      group.replaceChildren()
      labels.replaceChildren()
      return
    }
    const say = tongueOf(far.plan, store.units.value)
    const drawn = found.shades.map(({ limit, area }) => {
      const rings = area.flat().map((ring) => view.pathOf(ring as readonly Position[]))
      return { limit, rings, d: rings.map((ring) => `${pathData(ring)}Z`).join('') }
    })
    group.replaceChildren(
      ...drawn.map(({ limit, d }) => svgElement('path', { class: `far-shade far-${limit}`, d })),
    )
    labels.replaceChildren(
      ...drawn.flatMap(({ limit, rings }) => {
        const at = placeOn(rings, SIDES[limit], view)
        if (!at || isSmall(rings)) return []
        const text = svgElement('text', { class: 'far-label', x: at.x, y: at.y, 'text-anchor': 'middle' })
        text.textContent = farLabel(limit, found.limitsM[limit]!, say)
        return [text]
      }),
    )
  })
  return () => {
    isGone = true
    for (const end of [stop, stopAsking, stopFetching]) end()
    stopSearch?.()
    group.remove()
    labels.remove()
  }
}

/** Too small to bear a label beside the sign of its station. */
const isSmall = (rings: readonly (readonly Point[])[]): boolean => {
  const { min, max } = boundsOf(rings.flat())
  return max.x - min.x < SMALL_PX
}

/** The point of an outline that lies farthest to one side, of those on the screen. */
function placeOn(rings: readonly (readonly Point[])[], side: Point, view: MapView): Point | undefined {
  const { min, max } = view.screen.peek()
  const room = {
    min: { x: min.x + INSIDE.x, y: min.y + INSIDE.top },
    max: { x: max.x - INSIDE.x, y: max.y - INSIDE.bottom },
  }
  let best: Point | undefined
  let most = Number.NEGATIVE_INFINITY
  for (const point of rings.flat()) {
    const along = point.x * side.x + point.y * side.y
    if (along > most && isIn(room, point)) [best, most] = [point, along]
  }
  return best
}
