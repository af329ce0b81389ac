import type { ReadonlySignal } from '@preact/signals'
import type { Position } from '../../geo/position'
import { effect } from '../../state/steady-effect'
import type { MapView } from '../view/map-view'
import { pathData } from '../view/path-data'
import { svgElement } from '../view/svg-element'

/** Shows the corners set so far and the stretch to the pointer. */
export function showDraft(
  view: MapView,
  corners: ReadonlySignal<readonly Position[]>,
  pointer: ReadonlySignal<Position | null>,
  { corners: withCorners = true }: { readonly corners?: boolean } = {},
): () => void {
  const group = view.addGroup('draft', 'signs-moving')
  const stop = effect(() => {
    view.frame.value
    const set = corners.value
    if (set.length === 0) {
      group.replaceChildren()
      return
    }
    const path = view.pathOf(pointer.value ? [...set, pointer.value] : set)
    group.replaceChildren(
      svgElement('path', { class: 'draft-path', d: pathData(path) }),
      ...path
        .slice(0, withCorners ? set.length : 0)
        .map(({ x, y }) => svgElement('circle', { class: 'bend', cx: x, cy: y, r: 5 })),
    )
  })
  return () => {
    stop()
    group.remove()
  }
}
