import { GeoTIFF, type GeoTIFFImage } from 'geotiff'
import { bad, ok, type Result } from '../problem'
import {
  type ElevationGrid,
  type Extent,
  type GridTransform,
  windowTransform,
} from '../terrain/elevation-grid'
import { METRES_PER_FOOT } from '../units'
import { BlockTooLong } from './bounded-bytes'
import type { ByteSource, Reading } from './byte-source'
import { crsOf, transformOf } from './geotiff-crs'
import { readHeights, readMeans, type ValueScale } from './geotiff-heights'
import { checkBlockSizes, geotiffSource, Refusal } from './geotiff-limits'
import { MOST_CELLS, type RasterWindow, windowOver } from './raster-window'
import { checkTiff } from './tiff-check'
import { COMPRESSIONS, noteBigEndian, useBoundedDecoders } from './tiff-packings'

/** So many cells a side are taken as one, at most, where there are too many: beyond, reading would take minutes. */
const MOST_STEP = 8
/** EPSG units of the vertical axis, m. */
const VERTICAL_UNIT_M: Readonly<Record<number, number>> = {
  9001: 1,
  9002: METRES_PER_FOOT,
  9003: 1200 / 3937,
}

/**
 * Reads the window of a GeoTIFF that covers an extent: its first band, as elevations in m. Null where they do not meet.
 *
 * Geographic, UTM and web-mercator grids, and those of any system that is known; 8 to 32-bit integers, 32 and 64-bit floats; tiles and
 * strips; LZW, deflate, PackBits, ZSTD, LERC, JPEG.
 * What a file claims is checked against its size before memory is reserved for it. Rejects only where it is stopped.
 */
export async function readGeotiffGrid(
  source: ByteSource,
  extent?: Extent,
  reading: Reading = {},
): Promise<Result<ElevationGrid | null>> {
  const checked = await checkTiff(source)
  if (!checked.ok) return checked
  try {
    return ok(await readChecked(source, checked.value, extent, reading))
  } catch (error) {
    reading.signal?.throwIfAborted()
    const fault = (code: string, what: string) => bad({ code, at: source.name, message: `The file ${what}` })
    if (error instanceof Refusal) return fault(error.code, error.message)
    if (error instanceof BlockTooLong) {
      return fault('block-too-long', 'is broken: one of its tiles unpacks to more than it should hold.')
    }
    return fault('broken', 'is broken: its heights cannot be read. Copy or download it again.')
  }
}

async function readChecked(
  source: ByteSource,
  images: number,
  extent: Extent | undefined,
  reading: Reading,
): Promise<ElevationGrid | null> {
  await useBoundedDecoders()
  const tiff = await GeoTIFF.fromSource(geotiffSource(source))
  const full = await tiff.getImage(0)
  const directory = full.fileDirectory
  const columns = full.getWidth()
  const rows = full.getHeight()
  if (!(columns >= 1 && rows >= 1)) throw new Refusal('empty', 'has no cells.')

  const keys = full.getGeoKeys()
  const crs = await crsOf(keys)
  if (typeof crs === 'string') {
    throw new Refusal(
      'unknown-crs',
      `${crs}. Save it in WGS 84 longitude and latitude, in UTM on WGS 84, or in web mercator (EPSG:3857).`,
    )
  }
  const transform = transformOf(
    {
      scale: await directory.loadValue('ModelPixelScale'),
      tiePoint: await directory.loadValue('ModelTiepoint'),
      matrix: await directory.loadValue('ModelTransformation'),
    },
    keys?.GTRasterTypeGeoKey === 2,
  )
  if (!transform) {
    throw new Refusal('no-transform', 'does not say how its cells lie: save it with a tie point and a scale.')
  }

  const scale = await valueScaleOf(full)
  const sizeOf = ({ left, top, right, bottom }: RasterWindow) => (right - left) * (bottom - top)
  let smallest:
    | { readonly image: GeoTIFFImage; readonly window: RasterWindow; readonly transform: GridTransform }
    | undefined
  for (let i = 0; i < images; i++) {
    const image = i === 0 ? full : await tiff.getImage(i)
    // Later images may be masks or other pictures: only a reduced copy of the first will do.
    if (i > 0 && image.fileDirectory.getValue('NewSubfileType') !== 1) continue
    const level = {
      crs,
      columns: image.getWidth(),
      rows: image.getHeight(),
      transform: reduced(transform, columns / image.getWidth(), rows / image.getHeight()),
    }
    const window = windowOver(level, extent)
    if (!window) return null
    const own = windowTransform(level.transform, window.left, window.top)
    if (sizeOf(window) <= MOST_CELLS) {
      await checkBlocks(image, window, source.sizeBytes)
      return {
        ...{ name: source.name, crs, transform: own },
        columns: window.right - window.left,
        rows: window.bottom - window.top,
        ...(await readHeights(image, window, scale, reading)),
      }
    }
    if (!smallest || sizeOf(window) < sizeOf(smallest.window)) smallest = { image, window, transform: own }
  }
  // No copy is coarse enough: means of the cells are.
  const step = smallest ? Math.ceil(Math.sqrt(sizeOf(smallest.window) / MOST_CELLS)) : Infinity
  if (smallest && step <= MOST_STEP) {
    await checkBlocks(smallest.image, smallest.window, source.sizeBytes)
    return {
      ...{ name: source.name, crs, transform: reduced(smallest.transform, step, step) },
      ...(await readMeans(smallest.image, smallest.window, scale, step, reading)),
    }
  }
  throw new Refusal(
    'too-many-cells',
    `has too many cells ${extent ? 'where the plan lies' : `(${(columns * rows).toLocaleString('en')})`}: ${(MOST_CELLS * MOST_STEP ** 2).toLocaleString('en')} can be read at once. Cut out the part around the plan, or make a coarser copy.`,
  )
}

/** The transform of a copy reduced by factors in columns and rows: its first cell's centre is not the first cell's of the whole. */
const reduced = (t: ElevationGrid['transform'], byColumns: number, byRows: number) => ({
  ...windowTransform(t, (byColumns - 1) / 2, (byRows - 1) / 2),
  xPerColumn: t.xPerColumn * byColumns,
  yPerColumn: t.yPerColumn * byColumns,
  xPerRow: t.xPerRow * byRows,
  yPerRow: t.yPerRow * byRows,
})

/** Refuses what the library should not be asked to decode. */
async function checkBlocks(image: GeoTIFFImage, window: RasterWindow, sizeBytes: number): Promise<void> {
  const compression = image.fileDirectory.getValue('Compression') ?? 1
  if (!COMPRESSIONS.has(compression)) {
    throw new Refusal('compression', 'is packed in a way that is not read here. Save it with deflate or LZW.')
  }
  const format = image.getSampleFormat()
  const bits = image.getBitsPerSample()
  const known = format === 3 ? [32, 64] : [8, 16, 32]
  if (![1, 2, 3].includes(format) || !known.includes(bits)) {
    throw new Refusal('sample-format', 'holds numbers of a kind that heights are not kept in.')
  }
  if (!image.littleEndian) noteBigEndian(image.fileDirectory)
  if (bits === 8 && image.getSamplesPerPixel() >= 3) {
    throw new Refusal('picture', 'is a picture, not a grid of heights.')
  }
  await checkBlockSizes(image, window, sizeBytes)
}

async function valueScaleOf(image: GeoTIFFImage): Promise<ValueScale> {
  const metadata = await image.getGDALMetadata(0)
  const number = (value: unknown, otherwise: number) => {
    const parsed = typeof value === 'string' ? Number.parseFloat(value) : Number.NaN
    return Number.isFinite(parsed) ? parsed : otherwise
  }
  const unitM = VERTICAL_UNIT_M[Number(image.getGeoKeys()?.VerticalUnitsGeoKey)] ?? 1
  // Undeclared, these two still never mean a height.
  const usual = image.getSampleFormat() === 2 && image.getBitsPerSample() === 16 ? -32768 : -9999
  return {
    factor: number(metadata?.SCALE, 1) * unitM,
    offsetM: number(metadata?.OFFSET, 0) * unitM,
    noData: image.getGDALNoData() ?? usual,
  }
}
