import type { GeoTIFF, GeoTIFFImage } from 'geotiff'
import type { ByteSource } from './byte-source'
import type { RasterWindow } from './raster-window'
import { MOST_BLOCK_BYTES } from './tiff-block'

/** Tiles or strips of one window, at most: 40 million cells in tiles of 16 × 16 are 160,000. */
const MOST_BLOCKS = 200_000
/** Bytes that the blocks of one window may unpack to: 16,384 × 16,384 cells of two bytes. */
const MOST_UNPACKED_BYTES = 512 * 2 ** 20

/** A file that is not read, and why: a clause after “The file”. */
export class Refusal extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message)
  }
}

/** Refuses blocks of a window that unpack to more than a page has room for, and such as lie on one another. */
export async function checkBlockSizes(
  image: GeoTIFFImage,
  window: RasterWindow,
  sizeBytes: number,
): Promise<void> {
  const width = image.getTileWidth()
  // A tile is whole even where the image ends in it; the last strip is as short as the image.
  const height = image.isTiled ? image.getTileHeight() : Math.min(image.getTileHeight(), image.getHeight())
  if (!(width >= 1 && height >= 1)) throw new Refusal('blocks', 'is broken: its tiles have no size.')
  if (width * height * image.getBytesPerPixel() > MOST_BLOCK_BYTES) {
    throw new Refusal('blocks', 'is packed in pieces too large to read. Save it in tiles of 256 × 256.')
  }
  const across = Math.ceil(window.right / width) - Math.floor(window.left / width)
  const down = Math.ceil(window.bottom / height) - Math.floor(window.top / height)
  const blocks = across * down
  if (blocks > MOST_BLOCKS)
    throw new Refusal('blocks', 'is cut into too many pieces. Save it in tiles of 256 × 256.')
  const unpackedBytes = blocks * width * height * image.getBytesPerPixel()
  if (unpackedBytes > MOST_UNPACKED_BYTES) {
    const [found, most] = [unpackedBytes, MOST_UNPACKED_BYTES].map((bytes) => Math.round(bytes / 2 ** 20))
    throw new Refusal(
      'too-many-cells',
      `unpacks to ${found!.toLocaleString('en')} MB where it is needed, and ${most} MB are read at most. Cut out the part around the plan, or make a coarser copy.`,
    )
  }
  await checkSharing(image, sizeBytes)
}

/** Blocks that lie on each other in the file: together they are longer than it is. */
async function checkSharing(image: GeoTIFFImage, sizeBytes: number): Promise<void> {
  const name = image.isTiled ? 'TileByteCounts' : 'StripByteCounts'
  const counts: ArrayLike<number | bigint> | undefined = await image.fileDirectory.loadValue(name)
  let packedBytes = 0
  for (let i = 0; i < (counts?.length ?? 0); i++) packedBytes += Number(counts![i])
  if (packedBytes > sizeBytes)
    throw new Refusal('blocks', 'is broken: its tiles are longer together than the file is. Save it again.')
}

/** The library's view of a source. A read beyond the end, or of more than a block may hold, is a broken file. */
export function geotiffSource(source: ByteSource): Parameters<typeof GeoTIFF.fromSource>[0] {
  const fetchSlice = async ({ offset, length }: { offset: number; length: number }) => {
    if (!(offset >= 0 && offset < source.sizeBytes) || length > MOST_BLOCK_BYTES)
      throw new RangeError('beyond the end')
    const bytes = await source.read(offset, Math.min(length, source.sizeBytes - offset))
    return bytes.byteLength === bytes.buffer.byteLength ? bytes.buffer : bytes.slice().buffer
  }
  return {
    fetch: (slices) => Promise.all(slices.map(fetchSlice)),
    fetchSlice: async (slice) => ({ ...slice, data: await fetchSlice(slice) }),
    fileSize: source.sizeBytes,
    close: async () => {},
  }
}
