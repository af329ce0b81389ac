import './suggested.css'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import { pathData } from '../view/path-data'
import { svgElement } from '../view/svg-element'

/** Draws ways that are suggested: dashed ink, for they are no wire yet; and beside them the others, and the ground in which they lie. */
export function showSuggested({ store, view }: Bench): () => void {
  const ground = view.addGroup('corridor', 'wire', 'hazards')
  const group = view.addGroup('suggested', 'wire-moving')
  const stop = effect(() => {
    view.frame.value
    const { ways, corridor, close } = store.besideSuggested.value
    const area = corridor.flat().map((ring) => `${pathData(view.pathOf(ring))}Z`)
    ground.replaceChildren(
      ...(area.length ? [svgElement('path', { class: 'corridor-area', d: area.join('') })] : []),
    )
    const d = store.suggested.value.map((way) => pathData(view.pathOf(way))).join('')
    group.replaceChildren(
      ...ways.map((way) => svgElement('path', { class: 'other-way', d: pathData(view.pathOf(way)) })),
      ...(d
        ? [
            svgElement('path', { class: 'suggested-halo', d }),
            svgElement('path', { class: 'suggested-way', d }),
          ]
        : []),
      ...close.map((place) => {
        const { x, y } = view.pointOf(place)
        return svgElement('circle', { class: 'close-ways', cx: x, cy: y, r: 12 })
      }),
    )
  })
  return () => {
    stop()
    ground.remove()
    group.remove()
  }
}
