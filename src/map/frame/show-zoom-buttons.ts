import type { MapView } from '../view/map-view'

/** Buttons to come nearer, to go farther and to see the whole plan: for hands with no wheel and no second finger. */
export function showZoomButtons(view: MapView, seeAll: () => void): { remove: () => void } {
  const group = document.createElement('div')
  group.className = 'zoom-buttons'
  const button = (sign: string, words: string, act: () => void) => {
    const element = document.createElement('button')
    element.type = 'button'
    element.textContent = sign
    element.setAttribute('aria-label', words)
    element.title = words
    element.addEventListener('click', act)
    return element
  }
  group.append(
    button('+', 'Nearer', () => view.map.zoomIn(1)),
    button('−', 'Farther', () => view.map.zoomOut(1)),
    button('▣', 'See the whole plan', seeAll),
  )
  view.container.after(group)
  return { remove: () => group.remove() }
}
