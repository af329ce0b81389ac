import * as L from 'leaflet'
import { sourceInUse } from '../../state/online-tiles'
import type { MapView } from '../view/map-view'

/** Deepest tiles that servers commonly have; nearer, they are enlarged. */
const DEEPEST_ZOOM = 19
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
  layer.on('tileerror', () =>
    credit(`${source.credit} · tiles are missing: check the address and the network`),
  )
  layer.on('load', () => credit(source.credit))
  layer.addTo(view.map)
  return () => layer.remove()
}
