import type { GeoTIFFImage } from 'geotiff'
import type { ElevationGrid, Heights } from '../terrain/elevation-grid'
import type { Reading } from './byte-source'
import type { RasterWindow } from './raster-window'

/** How values of the file become metres, and which of them is none. */
export interface ValueScale {
  readonly factor: number
  readonly offsetM: number
  readonly noData: number
}

/** Cells decoded between two reports of progress. */
const BAND_CELLS = 1e6
/** A height beyond this is no height on Earth, m. */
const ABSURD_M = 1e5

/** Rows of a window, band by band from its top, so that progress shows and a stop is heard. */
async function* bandsOf(
  image: GeoTIFFImage,
  window: RasterWindow,
  { signal, onProgress }: Reading,
): AsyncGenerator<Heights> {
  const columns = window.right - window.left
  const blockRows = Math.min(image.getTileHeight(), image.getHeight())
  const bandRows = Math.max(1, Math.ceil(BAND_CELLS / columns / blockRows)) * blockRows
  for (let top = window.top; top < window.bottom; ) {
    signal?.throwIfAborted()
    const bottom = Math.min(window.bottom, Math.floor(top / bandRows) * bandRows + bandRows)
    const [band] = (await image.readRasters({
      window: [window.left, top, window.right, bottom],
      samples: [0],
      ...(signal && { signal }),
    })) as unknown as [Heights]
    yield band
    top = bottom
    onProgress?.((top - window.top) / (window.bottom - window.top))
  }
}

/** A value of the file in metres; NaN for none. */
function metresOf({ factor, offsetM, noData }: ValueScale): (value: number) => number {
  // A float's "no data" is written in decimal: compare it as the float that it became.
  const floatNoData = Math.fround(noData)
  return (value) => {
    const known = value !== noData && Math.fround(value) !== floatNoData && Math.abs(value) < ABSURD_M
    return known ? value * factor + offsetM : Number.NaN
  }
}

/** The heights of a window. Floats carry voids as NaN. */
export async function readHeights(
  image: GeoTIFFImage,
  window: RasterWindow,
  scale: ValueScale,
  reading: Reading,
): Promise<Pick<ElevationGrid, 'heights' | 'noData'>> {
  const size = (window.right - window.left) * (window.bottom - window.top)
  const asFloat = image.getSampleFormat() === 3 || scale.factor !== 1 || scale.offsetM !== 0
  const metres = metresOf(scale)
  let heights: Heights | undefined
  let at = 0
  for await (const band of bandsOf(image, window, reading)) {
    heights ??= asFloat
      ? new Float32Array(size)
      : (new (band.constructor as new (n: number) => Heights)(size) as Heights)
    if (asFloat) for (let i = 0; i < band.length; i++) heights[at + i] = metres(band[i]!)
    else heights.set(band, at)
    at += band.length
  }
  heights ??= new Float32Array(0)
  return asFloat ? { heights } : { heights, noData: scale.noData }
}

/** The means of every so many cells a side of a window, of those that are known; what is over at its right and foot is left out. */
export async function readMeans(
  image: GeoTIFFImage,
  window: RasterWindow,
  scale: ValueScale,
  step: number,
  reading: Reading,
): Promise<Pick<ElevationGrid, 'heights' | 'columns' | 'rows'>> {
  const across = window.right - window.left
  const columns = Math.floor(across / step)
  const rows = Math.floor((window.bottom - window.top) / step)
  const heights = new Float32Array(columns * rows)
  const sums = new Float64Array(columns)
  const counts = new Uint16Array(columns)
  const metres = metresOf(scale)
  let row = 0
  for await (const band of bandsOf(image, window, reading)) {
    for (let start = 0; start < band.length && row < rows * step; start += across, row++) {
      for (let i = 0; i < columns * step; i++) {
        const heightM = metres(band[start + i]!)
        if (Number.isNaN(heightM)) continue
        const column = Math.floor(i / step)
        sums[column]! += heightM
        counts[column]!++
      }
      if (row % step < step - 1) continue
      const at = Math.floor(row / step) * columns
      // Of no known cell the mean is 0 / 0: not known either.
      for (let column = 0; column < columns; column++) heights[at + column] = sums[column]! / counts[column]!
      sums.fill(0)
      counts.fill(0)
    }
  }
  return { columns, rows, heights }
}
