import { effect } from '@preact/signals'
import { forward } from 'mgrs'
import type { Aim, Bench } from '../bench'
import { showTiles } from '../paper/show-tiles'
import { sourceInUse } from '../paper/tile-source'
import { goToDialog } from './go-to-dialog'
import { scaleBar } from './scale-bar'
import { tilesDialog } from './tiles-dialog'

/** Widest that the scale bar may be, px, and as a part of the map: on a phone the buttons beside it need the room. */
const WIDEST_PX = 150
const WIDEST = 0.25
/** Beyond these latitudes the military grid is polar, and the package knows only the zones between. */
const MGRS_SOUTH_DEG = -80
const MGRS_NORTH_DEG = 84

/** The map's foot: its scale, where the pointer is, and whose data it shows. */
export function showFoot(bench: Bench): { aimed: (aim: Aim | null) => void; remove: () => void } {
  const { store, view } = bench
  const foot = document.createElement('div')
  foot.className = sourceInUse() ? 'map-foot with-tiles' : 'map-foot'
  const bar = document.createElement('span')
  bar.className = 'scale-bar'
  const length = document.createElement('span')
  length.className = 'scale-length'
  const place = document.createElement('output')
  place.className = 'pointer-place'
  place.setAttribute('aria-live', 'off')
  const credit = document.createElement('span')
  credit.className = 'credit'
  const removeTiles = showTiles(view, (words) => {
    credit.textContent = words
  })
  const dialogs = [goToDialog(bench), tilesDialog()] as const
  foot.append(
    bar,
    length,
    place,
    credit,
    opener('Go to', dialogs[0]),
    opener(sourceInUse() ? 'Online map: on' : 'Online map', dialogs[1]),
  )
  view.container.after(foot, ...dialogs)

  const stop = effect(() => {
    view.frame.value
    const widestPx = Math.min(WIDEST_PX, view.map.getSize().x * WIDEST)
    const { lengthM, text } = scaleBar(widestPx * view.metresPerPx(), store.units.value)
    bar.style.width = `${(lengthM / view.metresPerPx()).toFixed(1)}px`
    length.textContent = text
  })

  return {
    aimed: (aim) => {
      place.textContent = aim ? placeText(aim.position, store.ground.peek()) : ''
    },
    remove: () => {
      stop()
      removeTiles()
      for (const dialog of dialogs) dialog.remove()
      foot.remove()
    },
  }
}

function opener(words: string, dialog: HTMLDialogElement): HTMLButtonElement {
  const button = document.createElement('button')
  button.type = 'button'
  button.textContent = words
  button.setAttribute('aria-haspopup', 'dialog')
  button.addEventListener('click', () => dialog.showModal())
  return button
}

function placeText(
  [lonDeg, latDeg]: Aim['position'],
  ground: { heightM(lon: number, lat: number): number | undefined } | undefined,
): string {
  const lat = `${Math.abs(latDeg).toFixed(5)}° ${latDeg < 0 ? 'S' : 'N'}`
  const lon = `${Math.abs(lonDeg).toFixed(5)}° ${lonDeg < 0 ? 'W' : 'E'}`
  const heightM = ground?.heightM(lonDeg, latDeg)
  return [
    `${lat} ${lon}`,
    ...(latDeg >= MGRS_SOUTH_DEG && latDeg <= MGRS_NORTH_DEG ? [gridReference(lonDeg, latDeg)] : []),
    ...(heightM === undefined ? [] : [`${Math.round(heightM)} m`]),
  ].join(' · ')
}

/** `32T PT 12345 67890`: the parts apart, as they are spoken. */
const gridReference = (lonDeg: number, latDeg: number): string =>
  forward([lonDeg, latDeg], 5).replace(/^(\d+\w)(\w\w)(\d{5})(\d{5})$/, '$1 $2 $3 $4')
