import { GeoTIFF, type GeoTIFFImage } from 'geotiff'
import { datumShiftOf } from '../../geo/datum-shift'
import { projectionOf } from '../../geo/projection'
import { bad, ok, type Result } from '../../problem'
import { cellOf } from '../../terrain/elevation-grid'
import { extentOf } from '../../terrain/grid-extent'
import { BlockTooLong } from '../bounded-bytes'
import type { ByteSource } from '../byte-source'
import { crsOf, transformOf } from '../geotiff-crs'
import { checkBlockSizes, geotiffSource, Refusal } from '../geotiff-limits'
import type { RasterWindow } from '../raster-window'
import { checkTiff } from '../tiff-check'
import { COMPRESSIONS, noteBigEndian, useBoundedDecoders } from '../tiff-packings'
import type { Picture, Rgba } from './picture'

/** Ways of colouring that are read: white is 0, black is 0, red green blue, a palette, JPEG's own. TIFF 6.0, PhotometricInterpretation. */
const COLOURS = new Set([0, 1, 2, 3, 6])
const REDUCED = 1

/** A GeoTIFF as a picture of the ground, in any system that is known, with its reduced copies for afar. */
export async function geotiffPicture(source: ByteSource): Promise<Result<Picture>> {
  const checked = await checkTiff(source)
  if (!checked.ok) return checked
  const fault = (code: string, what: string) => bad({ code, at: source.name, message: `The file ${what}` })
  try {
    return ok(await pictureOf(source, checked.value))
  } catch (error) {
    if (error instanceof Refusal) return fault(error.code, error.message)
    if (error instanceof BlockTooLong)
      return fault('block-too-long', 'is broken: one of its tiles unpacks to more than it should hold.')
    return fault('broken', 'is broken: its picture cannot be read. Copy or download it again.')
  }
}

/** Whether a GeoTIFF can only be a picture: it has colours, and so no heights. False where it cannot be read. */
export async function isColourTiff(source: ByteSource): Promise<boolean> {
  if (!(await checkTiff(source)).ok) return false
  try {
    const tiff = await GeoTIFF.fromSource(geotiffSource(source))
    const image = await tiff.getImage(0)
    const colours = image.fileDirectory.getValue('PhotometricInterpretation') ?? 1
    return (
      image.getBitsPerSample() <= 8 && (colours === 3 || colours === 6 || image.getSamplesPerPixel() >= 3)
    )
  } catch {
    return false
  }
}

async function pictureOf(source: ByteSource, images: number): Promise<Picture> {
  await useBoundedDecoders()
  const tiff = await GeoTIFF.fromSource(geotiffSource(source))
  const full = await tiff.getImage(0)
  const [columns, rows] = [full.getWidth(), full.getHeight()]
  const directory = full.fileDirectory
  const compression = directory.getValue('Compression') ?? 1
  if (!COMPRESSIONS.has(compression))
    throw new Refusal(
      'compression',
      'is packed in a way that is not read here. Save it with deflate, LZW or JPEG.',
    )
  if (full.getBitsPerSample() > 8 || !COLOURS.has(directory.getValue('PhotometricInterpretation') ?? -1))
    throw new Refusal(
      'no-picture',
      'is no picture of up to 8 bits a colour: save it as one, in red, green and blue.',
    )
  const keys = full.getGeoKeys()
  const crs = await crsOf(keys)
  if (typeof crs === 'string')
    throw new Refusal(
      'unknown-crs',
      `${crs}. Fit it as a scanned map instead: save it as JPEG or PNG for that.`,
    )
  const transform = transformOf(
    {
      scale: await directory.loadValue('ModelPixelScale'),
      tiePoint: await directory.loadValue('ModelTiepoint'),
      matrix: await directory.loadValue('ModelTransformation'),
    },
    keys?.GTRasterTypeGeoKey === 2,
  )
  if (!transform)
    throw new Refusal('no-transform', 'does not say how its cells lie: save it with a tie point and a scale.')

  const levels: GeoTIFFImage[] = [full]
  for (let i = 1; i < images; i++) {
    const image = await tiff.getImage(i)
    if (image.fileDirectory.getValue('NewSubfileType') === REDUCED) levels.push(image)
  }
  for (const level of levels) if (!level.littleEndian) noteBigEndian(level.fileDirectory)
  const projection = projectionOf(crs)
  const mercator = projectionOf({ kind: 'web-mercator' })
  return {
    ...{
      columns,
      rows,
      extent: extentOf({ crs, transform, columns, rows }, projection),
      shift: datumShiftOf(crs),
    },
    at: (eastM, northM) => {
      const [lonDeg, latDeg] = mercator.inverse(eastM, northM)
      const [column, row] = cellOf(transform, ...projection.forward(lonDeg, latDeg))
      return [column + 0.5, row + 0.5]
    },
    read: async (window, intoColumns, intoRows) => {
      const shrink = (window.right - window.left) / intoColumns
      // The coarsest copy that is still as fine as what is wanted.
      const level = levels.reduce((best, each) =>
        columns / each.getWidth() <= shrink * 1.2 && each.getWidth() < best.getWidth() ? each : best,
      )
      const [byX, byY] = [level.getWidth() / columns, level.getHeight() / rows]
      const own = {
        left: Math.floor(window.left * byX),
        top: Math.floor(window.top * byY),
        right: Math.min(level.getWidth(), Math.ceil(window.right * byX)),
        bottom: Math.min(level.getHeight(), Math.ceil(window.bottom * byY)),
      }
      await checkBlockSizes(level, own, source.sizeBytes)
      return rgbaOf(level, own, intoColumns, intoRows)
    },
  }
}

async function rgbaOf(
  image: GeoTIFFImage,
  window: RasterWindow,
  columns: number,
  rows: number,
): Promise<Rgba> {
  const { left, top, right, bottom } = window
  // Colours are mixed after they are read: between two numbers of a palette lies any colour.
  const read = (await image.readRGB({
    window: [left, top, right, bottom],
    ...{ interleave: true, enableAlpha: true },
  })) as unknown as ArrayLike<number>
  const [across, down] = [right - left, bottom - top]
  const bands = read.length / (across * down)
  const data = new Uint8ClampedArray(columns * rows * 4)
  for (let row = 0; row < rows; row++) {
    const [from, to] = shareOf(row, rows, down)
    for (let column = 0; column < columns; column++) {
      const [first, last] = shareOf(column, columns, across)
      const at = (row * columns + column) * 4
      for (let band = 0; band < 4; band++) {
        if (band >= bands) {
          data[at + band] = 255
          continue
        }
        let sum = 0
        for (let r = from; r < to; r++)
          for (let c = first; c < last; c++) sum += read[(r * across + c) * bands + band]!
        data[at + band] = sum / ((to - from) * (last - first))
      }
    }
  }
  return { data, columns, rows }
}

/** Which of so many cells fall to one of fewer: at least one. */
function shareOf(index: number, count: number, cells: number): readonly [from: number, to: number] {
  const from = Math.min(cells - 1, Math.floor((index * cells) / count))
  return [from, Math.max(from + 1, Math.floor(((index + 1) * cells) / count))]
}
