import type { MapArchive, TilePlace } from '../../files/maps/map-archive'
import { paintVectorTile } from '../../files/maps/paint-vector-tile'
import { pictureSize } from '../../files/picture-size'

/** A tile's picture is 256, 512 or 1024 px a side; a larger one would freeze whoever unpacks it. */
const MOST_PX = 2048

/** A tile of an archive as a picture; where the archive has no tile so near, the part of the one above it. Null where there is nothing. */
export async function archiveTile(
  archive: MapArchive,
  place: TilePlace,
  sizePx: number,
): Promise<ImageBitmap | null> {
  const up = Math.max(0, place.zoom - archive.maxZoom)
  const own = { zoom: place.zoom - up, column: place.column >> up, row: place.row >> up }
  const bytes = await archive.tile(own)
  if (!bytes) return null
  const parts = 2 ** up
  const part = { left: (place.column % parts) / parts, top: (place.row % parts) / parts, side: 1 / parts }
  const canvas = new OffscreenCanvas(sizePx, sizePx)
  const brush = canvas.getContext('2d')!
  if (archive.content === 'vector') paintVectorTile(brush, bytes, { ...part, sizePx, zoom: place.zoom })
  else {
    const size = pictureSize(bytes.buffer)
    if (size && Math.max(size.width, size.height) > MOST_PX) return null
    const picture = await createImageBitmap(new Blob([bytes]))
    const { width, height } = picture
    if (Math.max(width, height) <= MOST_PX)
      brush.drawImage(
        picture,
        ...[part.left * width, part.top * height, part.side * width, part.side * height],
        ...[0, 0, sizePx, sizePx],
      )
    picture.close()
  }
  return canvas.transferToImageBitmap()
}
