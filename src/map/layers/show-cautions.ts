import { effect } from '@preact/signals'
import type { Bench } from '../bench'
import { svgElement } from '../view/svg-element'

/** Marks nearer than this to one another are one, px. */
const APART_PX = 12

/** Marks every place on a line that has a caution. */
export function showCautions({ store, view }: Bench): () => void {
  const group = view.addGroup('caution-marks')
  const stop = effect(() => {
    view.frame.value
    const drawn: { x: number; y: number }[] = []
    for (const { place } of store.report.value.cautions) {
      if (!place) continue
      const { x, y } = view.pointOf(place.position)
      if (drawn.every((other) => Math.hypot(other.x - x, other.y - y) >= APART_PX)) drawn.push({ x, y })
    }
    group.replaceChildren(
      ...drawn.map(({ x, y }) => {
        const mark = svgElement('g', { transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})` })
        svgElement('path', { class: 'caution-plate', d: 'M0-8L7.5 5H-7.5Z' }, mark)
        svgElement('path', { class: 'caution-bar', d: 'M0-3.5V0.5M0 2.2V3.4' }, mark)
        return mark
      }),
    )
  })
  return () => {
    stop()
    group.remove()
  }
}
