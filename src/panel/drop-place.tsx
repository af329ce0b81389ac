import type { Store } from '../state/store'
import './drop-place.css'

/** Shown over the page while files are held above it: where they may be dropped, and which. */
export function DropPlace({ store }: { store: Store }) {
  return (
    store.dropping.value && (
      <div class="drop-place">
        <p>
          Drop here: a plan, elevations (GeoTIFF, .hgt), places and ways (GPX, KML, CSV, GeoJSON, GeoPackage),
          maps (PMTiles, MBTiles, GeoTIFF, pictures)
        </p>
      </div>
    )
  )
}
