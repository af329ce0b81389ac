import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import { svgElement } from '../view/svg-element'

/** Numbers the places on a circuit that were found to be good for something, the best first. */
export function showSpots({ store, view }: Bench): () => void {
  const group = view.addGroup('spot-signs', 'signs-moving')
  const stop = effect(() => {
    view.frame.value
    group.replaceChildren(
      // The best lies on top of those beside it.
      ...[...store.spots.value.entries()].reverse().map(([i, place]) => {
        const { x, y } = view.pointOf(place)
        const sign = svgElement('g', {
          class: i === 0 ? 'spot best' : 'spot',
          transform: `translate(${x.toFixed(1)} ${(y - 16).toFixed(1)})`,
        })
        svgElement('path', { d: 'M0 15L-6 7A11 11 0 1 1 6 7Z' }, sign)
        svgElement('text', { y: 3, 'text-anchor': 'middle' }, sign).textContent = String(i + 1)
        return sign
      }),
    )
  })
  return () => {
    stop()
    group.remove()
  }
}
