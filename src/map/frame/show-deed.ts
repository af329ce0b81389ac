import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'

/** How long a deed is told, ms: undo goes on after that. */
const SHOWN_MS = 12_000

/** A strip that tells what was just done, with the way back at hand. It goes with the next deed, or after a while. */
export function showDeed({ view, store, say }: Bench): { remove: () => void } {
  const strip = document.createElement('div')
  strip.className = 'map-deed'
  const words = document.createElement('span')
  const back = document.createElement('button')
  back.type = 'button'
  back.addEventListener('click', () => {
    store.deed.peek()?.back.act()
    view.container.focus({ preventScroll: true })
  })
  view.container.after(strip)
  let timer: ReturnType<typeof setTimeout> | undefined
  const stop = effect(() => {
    const deed = store.deed.value
    clearTimeout(timer)
    strip.classList.toggle('empty', !deed)
    if (!deed) {
      strip.replaceChildren()
      return
    }
    words.textContent = `${deed.sentence}.`
    back.textContent = deed.back.words
    back.setAttribute('aria-label', `${deed.back.words}: ${deed.sentence}`)
    strip.replaceChildren(words, back)
    say(deed.sentence)
    const putAway = () => {
      // Not from under a hand that is about to press it.
      if (strip.matches(':hover, :focus-within')) timer = setTimeout(putAway, SHOWN_MS)
      else strip.classList.add('empty')
    }
    timer = setTimeout(putAway, SHOWN_MS)
  })
  return {
    remove: () => {
      clearTimeout(timer)
      stop()
      strip.remove()
    },
  }
}
