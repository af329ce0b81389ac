import { goTo } from './back-button'

/** A tile server as the person names it, and the credit that its owner asks for. */
export interface TileSource {
  readonly url: string
  readonly credit: string
  /** The person has said that its terms let tiles be kept: `keeping-allowed.ts`. */
  readonly mayKeep?: boolean
}

/** What tiles are for: a picture of the country, or its heights. */
export type TileUse = 'map' | 'elevation'

export const SUGGESTED_SOURCES: Readonly<Record<TileUse, TileSource>> = {
  map: {
    url: 'https://tile.openstreetmap.org/{z}/{x}/{y}.png',
    credit: '© OpenStreetMap contributors',
  },
  elevation: {
    url: 'https://s3.amazonaws.com/elevation-tiles-prod/terrarium/{z}/{x}/{y}.png',
    credit: 'Terrain Tiles: SRTM, GMTED2010, ETOPO1 and national open data',
  },
}

/** Whether the page was opened from a disk: it is the whole program then, and no page beside it may ask a network. */
export const isFromDisk = (): boolean => location.protocol === 'file:'

export const NOT_FROM_DISK =
  'This program was opened from a file, which may ask nothing of a network. Open it from a server for that.'

/** The page whose policy lets tiles in. */
const ONLINE_PAGE = 'online.html'
const KEYS: Readonly<Record<TileUse, string>> = { map: 'fieldpair-tiles', elevation: 'fieldpair-elevation' }

/** Whether an address names a tile server: over a safe connection, with places for the tile's zoom, column and row. */
export const isTileAddress = (url: string): boolean =>
  /^https:\/\/[^/{}]+\//.test(url) && ['{z}', '{x}', '{y}'].every((part) => url.includes(part))

const mayAsk = (): boolean => location.pathname.endsWith(`/${ONLINE_PAGE}`)

/**
 * The server that the person turned on, for as long as this tab lives; null for none. It is not in the page's address, so that
 * nobody else can turn it on with a link.
 */
export function sourceInUse(use: TileUse): TileSource | null {
  if (!mayAsk()) return null
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(KEYS[use]) ?? 'null')
    return isSource(kept) && isTileAddress(kept.url) ? kept : null
  } catch {
    return null
  }
}

const isSource = (value: unknown): value is TileSource =>
  typeof value === 'object' &&
  value !== null &&
  typeof (value as TileSource).url === 'string' &&
  typeof (value as TileSource).credit === 'string'

/** Goes to the page that may ask the server. */
export function turnOnTiles(use: TileUse, { url, credit }: TileSource): void {
  // What was left on when the person went back to the closed page does not come on with something else.
  if (!mayAsk()) for (const key of Object.values(KEYS)) sessionStorage.removeItem(key)
  sessionStorage.setItem(KEYS[use], JSON.stringify({ url, credit }))
  goTo(`./${ONLINE_PAGE}`)
}

/** Notes of the map that is turned on whether its tiles may be kept. */
export function allowKeeping(mayKeep: boolean): void {
  const source = sourceInUse('map')
  if (source) sessionStorage.setItem(KEYS.map, JSON.stringify({ ...source, mayKeep }))
}

/** Goes back to the page that may ask nobody, unless something else is still turned on. */
export function turnOffTiles(use: TileUse): void {
  sessionStorage.removeItem(KEYS[use])
  const isAnyOn = Object.values(KEYS).some((key) => sessionStorage.getItem(key) !== null)
  goTo(isAnyOn ? `./${ONLINE_PAGE}` : './')
}
