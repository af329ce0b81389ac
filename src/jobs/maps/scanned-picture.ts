import type { Picture } from '../../files/maps/picture'
import { pictureSize } from '../../files/picture-size'
import { type MapFit, onGround, onPicture } from '../../geo/map-fit'
import { projectionOf } from '../../geo/projection'
import { bad, ok, type Result } from '../../problem'
import type { MapSpec } from './map-spec'

/** A picture of more cells takes more memory to unpack than a page should: 80 million are 320 MB for a moment. */
const MOST_CELLS = 80e6
/** So many are kept: a sheet of paper has no more to show. */
const KEPT_CELLS = 24e6
const EDGE = 16

/** A photograph or scan of a map, laid on the ground by its marks. */
export async function scannedPicture({ name, file, fit }: MapSpec): Promise<Result<Picture>> {
  const refused = (message: string) => bad({ code: 'no-picture', at: name, message })
  const size = pictureSize(await file.slice(0, 1e6).arrayBuffer())
  if (!size) return refused('The file is no PNG, JPEG or WebP picture, or is broken: save it again as one.')
  if (size.width * size.height > MOST_CELLS)
    return refused(
      `The picture has ${Math.round((size.width * size.height) / 1e6)} million dots, and ${MOST_CELLS / 1e6} million are read at most: save it smaller.`,
    )
  if (!fit) return refused('The picture does not lie on the ground yet: fit it by three marks or more.')
  const shrink = Math.min(1, Math.sqrt(KEPT_CELLS / (size.width * size.height)))
  let bitmap: ImageBitmap
  try {
    bitmap = await createImageBitmap(file, {
      // Marks count as the picture is shown, turned as its camera says.
      imageOrientation: 'from-image',
      ...(shrink < 1 && { resizeWidth: Math.round(size.width * shrink), resizeQuality: 'high' as const }),
    })
  } catch {
    return refused('The picture is broken: it cannot be unpacked. Copy or save it again.')
  }
  const [columns, rows] = [bitmap.width, bitmap.height]
  return ok({
    ...{ columns, rows, extent: extentOf(fit, columns / shrink, rows / shrink) },
    at: (eastM, northM) => {
      const [x, y] = onPicture(fit, eastM, northM)
      return [x * shrink, y * shrink]
    },
    read: async ({ left, top, right, bottom }, intoColumns, intoRows) => {
      const canvas = new OffscreenCanvas(intoColumns, intoRows)
      const brush = canvas.getContext('2d', { willReadFrequently: true })!
      brush.imageSmoothingQuality = 'high'
      brush.drawImage(bitmap, left, top, right - left, bottom - top, 0, 0, intoColumns, intoRows)
      const { data } = brush.getImageData(0, 0, intoColumns, intoRows)
      return { data: data as Uint8ClampedArray<ArrayBuffer>, columns: intoColumns, rows: intoRows }
    },
  })
}

function extentOf(fit: MapFit, width: number, height: number): Picture['extent'] {
  const mercator = projectionOf({ kind: 'web-mercator' })
  const places: (readonly [number, number])[] = []
  for (let i = 0; i <= EDGE; i++)
    for (const [x, y] of [
      [i / EDGE, 0],
      [i / EDGE, 1],
      [0, i / EDGE],
      [1, i / EDGE],
    ] as const)
      places.push(mercator.inverse(...onGround(fit, x * width, y * height)))
  const lons = places.map(([lonDeg]) => lonDeg).filter(Number.isFinite)
  const lats = places.map(([, latDeg]) => latDeg).filter(Number.isFinite)
  return {
    westDeg: Math.min(...lons),
    eastDeg: Math.max(...lons),
    southDeg: Math.min(...lats),
    northDeg: Math.max(...lats),
  }
}
