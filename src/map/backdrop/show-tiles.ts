import * as L from 'leaflet'
import { sourceInUse } from '../../state/online-tiles'
import type { MapView } from '../view/map-view'

/** Deepest tiles that servers commonly have; nearer, they are enlarged. */
const DEEPEST_ZOOM = 19
/** Twice the common 512 px of sharp screens. */
const MOST_PX = 1024
const LAND_CREDIT = 'Coast: Natural Earth'

/** One layer of online tiles, where the person has turned it on; says whose data the map shows. */
export function showTiles(view: MapView, credit: (words: string) => void): () => void {
  const source = sourceInUse('map')
  credit(source?.credit ?? LAND_CREDIT)
  if (!source) return () => undefined
  const layer = L.tileLayer(source.url, {
    maxZoom: view.map.getMaxZoom(),
    maxNativeZoom: DEEPEST_ZOOM,
    className: 'online-tiles',
  })
  // Its size is known before it is unpacked, which would freeze the page.
  layer.on('tileload', ({ tile }) => {
    if (tile.naturalWidth <= MOST_PX && tile.naturalHeight <= MOST_PX) return
    tile.removeAttribute('src')
    credit(
      `${source.credit} · its pictures are too large (${tile.naturalWidth} × ${tile.naturalHeight}): check the address`,
    )
  })
  layer.on('tileerror', () =>
    credit(`${source.credit} · tiles are missing: check the address and the network`),
  )
  layer.on('load', () => credit(source.credit))
  layer.addTo(view.map)
  return () => layer.remove()
}
