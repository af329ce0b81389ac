import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import { pathData } from '../view/path-data'
import { svgElement } from '../view/svg-element'

/** Draws ways that are suggested: dashed ink, for they are no wire yet. */
export function showSuggested({ store, view }: Bench): () => void {
  const group = view.addGroup('suggested', 'wire-moving')
  const stop = effect(() => {
    view.frame.value
    const d = store.suggested.value.map((way) => pathData(view.pathOf(way))).join('')
    group.replaceChildren(
      ...(d
        ? [
            svgElement('path', { class: 'suggested-halo', d }),
            svgElement('path', { class: 'suggested-way', d }),
          ]
        : []),
    )
  })
  return () => {
    stop()
    group.remove()
  }
}
