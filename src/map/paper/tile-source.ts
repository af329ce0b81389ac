/** A raster tile server as the person names it, and the credit that its owner asks for. */
export interface TileSource {
  readonly url: string
  readonly credit: string
}

export const SUGGESTED_SOURCE: TileSource = {
  url: 'https://tile.openstreetmap.org/{z}/{x}/{y}.png',
  credit: '© OpenStreetMap contributors',
}

/** The page whose policy lets tiles in. */
const ONLINE_PAGE = 'online.html'
const KEY = 'fieldpair-tiles'

/** Whether an address names a tile server: over a safe connection, with places for the tile's zoom, column and row. */
export const isTileAddress = (url: string): boolean =>
  /^https:\/\/[^/{}]+\//.test(url) && ['{z}', '{x}', '{y}'].every((part) => url.includes(part))

/**
 * The server that the person turned on, for as long as this tab lives; null for none. It is not in the page's address, so that
 * nobody else can turn it on with a link.
 */
export function sourceInUse(): TileSource | null {
  if (!location.pathname.endsWith(`/${ONLINE_PAGE}`)) return null
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? 'null')
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
export function turnOnTiles({ url, credit }: TileSource): void {
  sessionStorage.setItem(KEY, JSON.stringify({ url, credit }))
  location.assign(`./${ONLINE_PAGE}`)
}

/** Goes back to the page that may ask nobody. */
export function turnOffTiles(): void {
  sessionStorage.removeItem(KEY)
  location.assign('./')
}
