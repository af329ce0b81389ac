import { onPlaceRequested } from '../../state/requests'
import type { MapView } from './map-view'

/** A place this near the edge of the screen is not in sight, as a part of its size. */
const EDGE = 0.1

/** From farther out than the first of these zooms a place is brought to the second. */
const FAR_ZOOM = 10
const NEAR_ZOOM = 13

/** Brings a place that the panel asks for into sight, and leaves the map alone where it is in sight already. */
export const showRequestedPlace = ({ map }: MapView): (() => void) =>
  onPlaceRequested(([lonDeg, latDeg]) => {
    if (map.getZoom() < FAR_ZOOM) map.setView([latDeg, lonDeg], NEAR_ZOOM, { animate: false })
    else if (!map.getBounds().pad(-EDGE).contains([latDeg, lonDeg]))
      map.panTo([latDeg, lonDeg], { animate: false })
  })
