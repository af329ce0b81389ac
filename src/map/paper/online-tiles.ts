import * as L from 'leaflet'
import type { MapView } from '../view/map-view'
import { isTileAddress } from './tile-address'

/** A raster tile server as the person names it. */
interface TileSource {
  readonly url: string
  readonly attribution: string
}

const SUGGESTED: TileSource = {
  url: 'https://tile.openstreetmap.org/{z}/{x}/{y}.png',
  attribution: '© OpenStreetMap contributors',
}
const LAND_CREDIT = 'Coast: Natural Earth'
/** Deepest tiles that such servers commonly have; nearer, they are enlarged. */
const DEEPEST_ZOOM = 19
/** The page whose policy lets tiles in: going there is what turns them on. */
const ONLINE_PAGE = 'online.html'

const isOnlinePage = (): boolean => location.pathname.endsWith(`/${ONLINE_PAGE}`)

/** The tile server that the page's address names, if it names one and the page may ask it. */
function sourceInAddress(): TileSource | null {
  const named = new URLSearchParams(location.hash.slice(1))
  const url = named.get('tiles')
  return isOnlinePage() && url ? { url, attribution: named.get('credit') ?? '' } : null
}

/** One layer of online tiles, off until the person turns it on, and the button and dialog that do so. */
export function onlineTiles(view: MapView, credit: HTMLElement): { button: HTMLElement; remove: () => void } {
  const source = sourceInAddress()
  credit.textContent = LAND_CREDIT
  const button = document.createElement('button')
  button.type = 'button'
  button.className = 'tiles-button'
  button.textContent = source ? 'Online map: on' : 'Online map'
  const dialog = tileDialog(source ?? SUGGESTED, source !== null)
  button.addEventListener('click', () => dialog.showModal())
  view.container.after(dialog)
  const layer = source && tileLayer(source)
  if (source && layer) {
    credit.textContent = source.attribution
    layer.on('tileerror', () => {
      credit.textContent = `${source.attribution} · some tiles do not come: is the address right, is there a network?`
    })
    layer.addTo(view.map)
  }
  return {
    button,
    remove: () => {
      layer?.remove()
      dialog.remove()
    },
  }
}

/** Null where the address is no tile address, so that nothing is asked of anyone. */
const tileLayer = ({ url }: TileSource): L.TileLayer | null =>
  isTileAddress(url)
    ? L.tileLayer(url, {
        maxZoom: 22,
        maxNativeZoom: DEEPEST_ZOOM,
        className: 'online-tiles',
        crossOrigin: false,
      })
    : null

function tileDialog(source: TileSource, on: boolean): HTMLDialogElement {
  const dialog = document.createElement('dialog')
  dialog.className = 'tiles-dialog'
  const heading = document.createElement('h2')
  heading.id = 'tiles-heading'
  heading.textContent = 'A map from the network?'
  dialog.setAttribute('aria-labelledby', heading.id)
  const words = document.createElement('p')
  words.textContent =
    'While it is on, the tile server sees which area you look at, from your network address. Your plan is not sent. With it off, nothing leaves this machine.'
  const address = field('Tile address', source.url)
  const owner = field('Credit that its owner asks for', source.attribution)
  const fault = document.createElement('p')
  fault.className = 'fails'
  fault.setAttribute('role', 'alert')
  const turnOn = document.createElement('button')
  turnOn.type = 'button'
  turnOn.textContent = on ? 'Use this address' : 'Turn on'
  turnOn.addEventListener('click', () => {
    if (!isTileAddress(address.input.value)) {
      fault.textContent = 'The address must begin with https:// and hold {z}, {x} and {y}.'
      return
    }
    const named = new URLSearchParams({ tiles: address.input.value, credit: owner.input.value })
    goTo(`./${ONLINE_PAGE}#${named}`)
  })
  const turnOff = document.createElement('button')
  turnOff.type = 'button'
  turnOff.textContent = on ? 'Turn off' : 'Leave it off'
  turnOff.addEventListener('click', () => (on ? goTo('./') : dialog.close()))
  const row = document.createElement('div')
  row.className = 'tiles-buttons'
  row.append(turnOff, turnOn)
  dialog.append(heading, words, address.label, owner.label, fault, row)
  return dialog
}

/** A change of the address's fragment alone would not load the page anew. */
function goTo(address: string): void {
  const target = new URL(address, location.href)
  const samePage = target.pathname === location.pathname
  location.assign(target)
  if (samePage) location.reload()
}

function field(words: string, value: string): { label: HTMLLabelElement; input: HTMLInputElement } {
  const label = document.createElement('label')
  const input = document.createElement('input')
  input.value = value
  input.spellcheck = false
  label.append(words, input)
  return { label, input }
}
