import type { Extent } from '../../terrain/elevation-grid'
import type { OpenedMap } from './opened-map'

/** A map that has a part in a picture, and how strong it is, 0…1. */
export interface StripLayer {
  readonly map: OpenedMap
  readonly opacity: number
}

/** A tile is laid in so many slices: Mercator's rows are not even in latitude, and within a slice that is less than a dot. */
const SLICES = 16
const MOST_TILES = 120
/** How much of a colour's darkness is left on paper: ink must stand out from it. */
const DARKNESS = 0.55

const columnOf = (lonDeg: number, zoom: number): number => ((lonDeg + 180) / 360) * 2 ** zoom
const rowOf = (latDeg: number, zoom: number): number =>
  (0.5 - Math.asinh(Math.tan((latDeg * Math.PI) / 180)) / (2 * Math.PI)) * 2 ** zoom
const latOf = (row: number, zoom: number): number =>
  (Math.atan(Math.sinh(Math.PI * (1 - (2 * row) / 2 ** zoom))) * 180) / Math.PI

/** The ground of an extent, even in longitude and latitude, in greys for paper: maps one over the other, the first lowest. Null where none of them has anything there. */
export async function groundStrip(
  layers: readonly StripLayer[],
  extent: Extent,
  width: number,
  height: number,
): Promise<Blob | null> {
  const canvas = new OffscreenCanvas(width, height)
  const brush = canvas.getContext('2d', { willReadFrequently: true })!
  brush.fillStyle = '#fff'
  brush.fillRect(0, 0, width, height)
  let isEmpty = true
  for (const { map, opacity } of layers) {
    brush.globalAlpha = opacity
    if (await lay(map, brush, extent, width, height)) isEmpty = false
  }
  if (isEmpty) return null
  const dots = brush.getImageData(0, 0, width, height)
  for (let i = 0; i < dots.data.length; i += 4) {
    // Rec. ITU-R BT.601: how light a colour is to the eye.
    const light = 0.299 * dots.data[i]! + 0.587 * dots.data[i + 1]! + 0.114 * dots.data[i + 2]!
    dots.data.fill(255 - (255 - light) * DARKNESS, i, i + 3)
  }
  brush.putImageData(dots, 0, 0)
  return canvas.convertToBlob({ type: 'image/png' })
}

/** Lays the tiles of one map; false where there are none. */
async function lay(
  { facts, tile }: OpenedMap,
  brush: OffscreenCanvasRenderingContext2D,
  { westDeg, southDeg, eastDeg, northDeg }: Extent,
  width: number,
  height: number,
): Promise<boolean> {
  // As near as the picture has dots for.
  const fitting = Math.round(Math.log2((360 * width) / ((eastDeg - westDeg) * 256)))
  const zoom = Math.max(facts.minZoom, Math.min(fitting, 22))
  const [left, right] = [Math.floor(columnOf(westDeg, zoom)), Math.floor(columnOf(eastDeg, zoom))]
  const [top, bottom] = [Math.floor(rowOf(northDeg, zoom)), Math.floor(rowOf(southDeg, zoom))]
  if ((right - left + 1) * (bottom - top + 1) > MOST_TILES) return false
  const toX = (column: number) => (((column / 2 ** zoom) * 360 - 180 - westDeg) / (eastDeg - westDeg)) * width
  const toY = (row: number) => ((northDeg - latOf(row, zoom)) / (northDeg - southDeg)) * height
  const around = 2 ** zoom
  let isEmpty = true
  for (let column = left; column <= right; column++)
    for (let row = top; row <= bottom; row++) {
      const place = { zoom, column: ((column % around) + around) % around, row }
      const picture = await tile(place, 256)
      if (!picture) continue
      isEmpty = false
      const [x0, x1] = [toX(column), toX(column + 1)]
      for (let slice = 0; slice < SLICES; slice++) {
        const [y0, y1] = [toY(row + slice / SLICES), toY(row + (slice + 1) / SLICES)]
        const from = (slice * picture.height) / SLICES
        // A hair more, so that no seam shows between two slices.
        brush.drawImage(
          picture,
          0,
          from,
          picture.width,
          picture.height / SLICES,
          x0,
          y0,
          x1 - x0 + 0.5,
          y1 - y0 + 0.5,
        )
      }
      picture.close()
    }
  return !isEmpty
}
