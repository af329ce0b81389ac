import { onPlaceWanted } from '../../state/place-request'
import type { MapView } from './map-view'

/** A place this near the edge of the screen is not in sight, as a part of its size. */
const EDGE = 0.1

/** Brings a place that the panel asks for into sight, and leaves the map alone where it is in sight already. */
export const showWanted = ({ map }: MapView): (() => void) =>
  onPlaceWanted(([lonDeg, latDeg]) => {
    if (!map.getBounds().pad(-EDGE).contains([latDeg, lonDeg]))
      map.panTo([latDeg, lonDeg], { animate: false })
  })
