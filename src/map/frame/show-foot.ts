import { signal } from '@preact/signals'
import { scaleBar } from '../../figure/scale-bar'
import { followHand } from '../../state/follow-hand'
import { sourceInUse } from '../../state/online-tiles'
import { effect } from '../../state/steady-effect'
import { showTiles } from '../backdrop/show-tiles'
import type { Aim, Bench } from '../bench'
import { placeWords } from './place-words'

/** Widest that the scale bar may be, px, and as a part of the map: on a phone the buttons beside it need the room. */
const WIDEST_PX = 150
const WIDEST = 0.25
/** How long the place that a finger has touched can be read, ms. */
const READ_MS = 10_000

/** The map's foot: its scale, where the pointer is, and whose data it shows. */
export function showFoot(bench: Bench): { aimed: (aim: Aim | null) => void; remove: () => void } {
  const { store, view } = bench
  const foot = document.createElement('div')
  foot.className = sourceInUse('map') ? 'map-foot with-tiles' : 'map-foot'
  const bar = document.createElement('span')
  bar.className = 'scale-bar'
  const length = document.createElement('span')
  length.className = 'scale-length'
  const place = document.createElement('output')
  place.className = 'pointer-place'
  place.setAttribute('aria-live', 'off')
  const credit = document.createElement('span')
  credit.className = 'credit'
  const beneath = signal('')
  const removeTiles = showTiles(view, (words) => {
    beneath.value = words
  })
  const goTo = opener('Go to', async () => (await import('./go-to-dialog')).goToDialog(bench))
  const maps = document.createElement('button')
  maps.type = 'button'
  maps.textContent = sourceInUse('map') ? 'Maps: online' : 'Maps'
  maps.title = 'Maps beneath the net'
  maps.setAttribute('aria-haspopup', 'dialog')
  maps.addEventListener('click', () => {
    store.mapsAreOpen.value = true
  })
  foot.append(bar, length, place, credit, goTo, maps)
  view.container.after(foot)

  const stopCrediting = effect(() => {
    const maps = store.maps.value.filter(({ isShown }) => isShown)
    const words = [...maps.map(({ facts }) => facts?.credit), beneath.value]
    credit.textContent = [...new Set(words.filter(Boolean))].join(' · ')
  })
  const stop = effect(() => {
    view.frame.value
    const widestPx = Math.min(WIDEST_PX, view.map.getSize().x * WIDEST)
    const { lengthM, text } = scaleBar(widestPx * view.metresPerPx(), store.units.value)
    bar.style.width = `${(lengthM / view.metresPerPx()).toFixed(1)}px`
    length.textContent = text
  })

  let timer: ReturnType<typeof setTimeout> | undefined
  let last: Aim | null = null
  const follow = followHand()
  const write = () => {
    place.textContent = last ? placeWords(store, last.position) : ''
    foot.classList.toggle('touched', last?.touch === true)
  }
  const aimed = (aim: Aim | null) => {
    clearTimeout(timer)
    last = aim
    follow(write)
    if (aim?.touch) timer = setTimeout(() => aimed(null), READ_MS)
  }

  return {
    aimed,
    remove: () => {
      clearTimeout(timer)
      stop()
      stopCrediting()
      removeTiles()
      foot.remove()
    },
  }
}

/** A button whose dialog is made when it is first wanted. It stands in the button's parent, and goes with it. */
function opener(words: string, make: () => Promise<HTMLDialogElement>): HTMLButtonElement {
  const button = document.createElement('button')
  let made: Promise<HTMLDialogElement> | undefined
  button.type = 'button'
  button.textContent = words
  button.setAttribute('aria-haspopup', 'dialog')
  button.addEventListener('click', async () => {
    made ??= make()
    const dialog = await made
    if (!dialog.isConnected) button.after(dialog)
    if (!dialog.open) dialog.showModal()
  })
  return button
}
