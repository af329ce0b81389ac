import { untracked } from '@preact/signals'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import { svgElement } from '../view/svg-element'

/** Marks the place of a fault that was found from a reading, and brings it onto the screen. */
export function showFault({ store, view }: Bench): () => void {
  const group = view.addGroup('fault', 'signs-moving')
  svgElement('circle', { r: 13 }, group)
  svgElement('path', { d: 'M-6 -6L6 6M6 -6L-6 6' }, group)
  svgElement('text', { x: 18, y: -12 }, group).textContent = 'Fault'

  const stopBringing = effect(() => {
    const place = store.faultPlace.value
    if (!place) return
    const { x, y } = view.pointOf(place)
    const { min, max } = untracked(() => view.screen.value)
    if (x < min.x || x > max.x || y < min.y || y > max.y) view.map.panTo([place[1], place[0]])
  })
  const stop = effect(() => {
    const place = store.faultPlace.value
    view.frame.value
    group.classList.toggle('hidden', place === null)
    if (!place) return
    const { x, y } = view.pointOf(place)
    group.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`)
  })

  return () => {
    stopBringing()
    stop()
    group.remove()
  }
}
