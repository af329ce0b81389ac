import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'

/** Beside the map's foot: the measure, the legend, and the lock under which one looks and changes nothing. */
export function showAids({ store, view, say }: Bench): { remove: () => void } {
  let sheet: Promise<HTMLElement> | undefined
  const group = document.createElement('div')
  group.className = 'map-aids'
  const button = (words: string, act: () => void) => {
    const element = document.createElement('button')
    element.type = 'button'
    element.textContent = words
    element.addEventListener('click', act)
    group.append(element)
    return element
  }
  const measure = button('Measure', () => {
    store.tool.value = store.tool.peek() === 'measure' ? 'select' : 'measure'
  })
  const lock = button('Lock', () => {
    store.locked.value = !store.locked.peek()
    say(store.locked.peek() ? 'Locked: nothing can be changed' : 'Unlocked')
  })
  lock.title = 'Look, and change nothing'
  const legend = button('Legend', async () => {
    sheet ??= import('./show-legend').then(({ legendSheet }) => legendSheet())
    const opened = await sheet
    if (!opened.isConnected) group.after(opened)
    opened.showPopover({ source: legend })
  })
  legend.title = 'What the signs on the map stand for'
  view.container.after(group)
  const stop = effect(() => {
    measure.setAttribute('aria-pressed', String(store.tool.value === 'measure'))
    lock.setAttribute('aria-pressed', String(store.locked.value))
    lock.textContent = store.locked.value ? 'Locked' : 'Lock'
  })
  return {
    remove: () => {
      stop()
      group.remove()
      void sheet?.then((made) => made.remove())
    },
  }
}
