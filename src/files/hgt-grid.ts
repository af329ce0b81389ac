import { bad, ok, type Result } from '../problem'
import {
  type ElevationGrid,
  type Extent,
  type GridTransform,
  windowTransform,
} from '../terrain/elevation-grid'
import type { ByteSource, Reading } from './byte-source'
import { windowOver } from './raster-window'

/** Samples on a side: 1″ and 3″ cells of one degree, the far edge among them. */
const SIDES = [3601, 1201] as const
const NO_DATA = -32768
/** Rows read at a time, so that progress shows and a stop is heard. */
const BAND_ROWS = 256

/**
 * Reads an SRTM height file: big-endian 16-bit metres, rows from north to south, void −32768; its name is its south-west corner.
 *
 * Source: USGS, Shuttle Radar Topography Mission quick start (SRTM_Topo, section 3.0). Null where no cell lies in the extent.
 */
export async function readHgtGrid(
  source: ByteSource,
  extent?: Extent,
  { signal, onProgress }: Reading = {},
): Promise<Result<ElevationGrid | null>> {
  const fault = (code: string, message: string) => bad({ code, at: source.name, message })

  const name = /([NS])(\d{2})([EW])(\d{3})[^/\\]*\.hgt$/i.exec(source.name)
  if (!name) {
    return fault('hgt-name', 'The name of an .hgt file must say its south-west corner, such as N46E007.hgt.')
  }
  const latDeg = Number(name[2]) * (name[1]!.toUpperCase() === 'S' ? -1 : 1)
  const lonDeg = Number(name[4]) * (name[3]!.toUpperCase() === 'W' ? -1 : 1)
  if (latDeg < -90 || latDeg > 89 || lonDeg < -180 || lonDeg > 179) {
    return fault('hgt-name', 'The name of the file is a corner off the globe.')
  }
  const side = SIDES.find((n) => n * n * 2 === source.sizeBytes)
  if (!side) {
    return fault(
      'hgt-size',
      `An .hgt file has 25,934,402 bytes (1″) or 2,884,802 bytes (3″); this one has ${source.sizeBytes.toLocaleString('en')}.`,
    )
  }

  const perCell = 1 / (side - 1)
  const transform: GridTransform = {
    x0: lonDeg,
    xPerColumn: perCell,
    xPerRow: 0,
    y0: latDeg + 1,
    yPerColumn: 0,
    yPerRow: -perCell,
  }
  const crs = { kind: 'geographic' } as const
  const window = windowOver({ crs, transform, columns: side, rows: side }, extent)
  if (!window) return ok(null)

  const columns = window.right - window.left
  const rows = window.bottom - window.top
  const heights = new Int16Array(columns * rows)
  for (let top = 0; top < rows; top += BAND_ROWS) {
    signal?.throwIfAborted()
    const bandRows = Math.min(BAND_ROWS, rows - top)
    const bytes = await source.read((window.top + top) * side * 2, bandRows * side * 2)
    if (bytes.length !== bandRows * side * 2) return fault('truncated', 'The file ends too early.')
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
    for (let row = 0; row < bandRows; row++) {
      const from = (row * side + window.left) * 2
      const to = (top + row) * columns
      for (let column = 0; column < columns; column++) heights[to + column] = view.getInt16(from + column * 2)
    }
    onProgress?.((top + bandRows) / rows)
  }
  return ok({
    name: source.name,
    crs,
    columns,
    rows,
    transform: windowTransform(transform, window.left, window.top),
    heights,
    noData: NO_DATA,
  })
}
