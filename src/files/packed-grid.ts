import { loadOtherSystems } from '../geo/other-system'
import { type GridCrs, projectionOf } from '../geo/projection'
import { bad, ok, type Result } from '../problem'
import type { ElevationGrid, Extent, GridTransform, Heights } from '../terrain/elevation-grid'
import type { ByteSource } from './byte-source'
import { MOST_CELLS, windowOver } from './raster-window'

/**
 * An elevation grid as JSON holds it: heights in whole units, row by row, each cell but the first of a row as what it is above the one before
 * (as TIFF's horizontal predictor has it: TIFF 6.0, section 14), 32-bit little-endian, deflated (RFC 1950), in base64.
 */
export interface PackedGrid {
  readonly name: string
  readonly crs: GridCrs
  readonly columns: number
  readonly rows: number
  readonly transform: GridTransform
  /** 1 for heights in whole metres, else 0.01: a centimetre. */
  readonly unitM: number
  readonly deltas: string
}

/** Stands for a cell whose height is not known. */
const VOID = -0x80000000
const FINE_M = 0.01

/** A grid to be put into a plan file. Whole metres stay as they are; all else is rounded to a centimetre. */
export async function packGrid(grid: ElevationGrid): Promise<PackedGrid> {
  const { name, crs, columns, rows, transform, heights, noData } = grid
  const unitM = heights.every((height) => Number.isInteger(height) || Number.isNaN(height)) ? 1 : FINE_M
  const deltas = new Int32Array(heights.length)
  for (let row = 0; row < rows; row++) {
    let before = 0
    for (let i = row * columns; i < (row + 1) * columns; i++) {
      const height = heights[i]!
      const units = Number.isNaN(height) || height === noData ? VOID : Math.round(height / unitM)
      deltas[i] = units - before
      before = units
    }
  }
  const packed = await through(new CompressionStream('deflate'), new Uint8Array(deltas.buffer))
  return { name, crs, columns, rows, transform, unitM, deltas: base64(packed) }
}

/** Reads a packed grid, whole. Null where no cell of it lies in the extent. */
export async function readPackedGrid(
  source: ByteSource,
  extent?: Extent,
): Promise<Result<ElevationGrid | null>> {
  const fault = bad({
    code: 'packed-grid',
    at: source.name,
    message: 'These are no elevations as a plan file carries them. Take the elevation file itself.',
  })
  const text = new TextDecoder().decode(await source.read(0, source.sizeBytes))
  const packed = await readPacked(text)
  if (!packed) return fault
  const { columns, rows, unitM, name, crs, transform } = packed
  if (!windowOver(packed, extent)) return ok(null)
  const inflated = await through(
    new DecompressionStream('deflate'),
    bytesOf(packed.deltas),
    columns * rows * 4,
  )
  if (inflated.length !== columns * rows * 4) return fault
  const units = new Int32Array(inflated.buffer)
  for (let row = 0; row < rows; row++)
    for (let i = row * columns + 1; i < (row + 1) * columns; i++) units[i] = units[i]! + units[i - 1]!
  const heights: Heights =
    unitM === 1 ? units : Float32Array.from(units, (unit) => (unit === VOID ? Number.NaN : unit * unitM))
  return ok({ name, crs, columns, rows, transform, heights, ...(unitM === 1 && { noData: VOID }) })
}

async function readPacked(text: string): Promise<PackedGrid | undefined> {
  let value: Partial<PackedGrid> | null
  try {
    value = JSON.parse(text)
  } catch {
    return undefined
  }
  const { name, crs, columns, rows, transform, unitM, deltas } = value ?? {}
  const isCount = (n: unknown) => Number.isSafeInteger(n) && (n as number) > 0
  const isWhole =
    typeof name === 'string' &&
    typeof deltas === 'string' &&
    isCount(columns) &&
    isCount(rows) &&
    columns! * rows! <= MOST_CELLS &&
    (unitM === 1 || unitM === FINE_M) &&
    (await isCrs(crs)) &&
    TRANSFORM.every((member) => Number.isFinite(transform?.[member]))
  return isWhole ? (value as PackedGrid) : undefined
}

const TRANSFORM = ['x0', 'xPerColumn', 'xPerRow', 'y0', 'yPerColumn', 'yPerRow'] as const

async function isCrs(crs: GridCrs | undefined): Promise<boolean> {
  if (crs?.kind === 'utm')
    return Number.isInteger(crs.zone) && crs.zone >= 1 && crs.zone <= 60 && typeof crs.south === 'boolean'
  if (crs?.kind === 'other' && typeof crs.definition === 'string') {
    await loadOtherSystems()
    try {
      projectionOf(crs)
      return true
    } catch {
      return false
    }
  }
  return crs?.kind === 'geographic' || crs?.kind === 'web-mercator'
}

/** Bytes through a stream that packs or unpacks them; no more than `most` come back and one, however much there is. */
async function through(
  stream: CompressionStream | DecompressionStream,
  bytes: Uint8Array<ArrayBuffer>,
  most = Number.POSITIVE_INFINITY,
): Promise<Uint8Array<ArrayBuffer>> {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader()
  const chunks: Uint8Array<ArrayBuffer>[] = []
  let length = 0
  for (;;) {
    const { done, value } = await reader.read()
    if (done) break
    chunks.push(value as Uint8Array<ArrayBuffer>)
    length += value.length
    if (length <= most) continue
    await reader.cancel()
    break
  }
  return new Uint8Array(await new Blob(chunks).arrayBuffer())
}

/** A string is built of pieces: one call takes no more arguments. */
const PIECE = 0x8000

function base64(bytes: Uint8Array): string {
  let text = ''
  for (let i = 0; i < bytes.length; i += PIECE) text += String.fromCharCode(...bytes.subarray(i, i + PIECE))
  return btoa(text)
}

const bytesOf = (text: string): Uint8Array<ArrayBuffer> => Uint8Array.from(atob(text), (c) => c.charCodeAt(0))
