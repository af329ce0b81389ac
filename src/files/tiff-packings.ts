import { addDecoder, type BaseDecoder, getDecoder, type ImageFileDirectory } from 'geotiff'
import type { Parameters } from './tiff-block'
import { BoundedInflate, BoundedLzw, BoundedPackBits } from './tiff-decoders'

/** Ways of packing that are read, by their numbers. */
export const COMPRESSIONS = new Map([
  [1, 'none'],
  [5, 'LZW'],
  [7, 'JPEG'],
  [8, 'deflate'],
  [32946, 'deflate'],
  [32773, 'PackBits'],
  [34887, 'LERC'],
  [50000, 'ZSTD'],
])

type DecoderClass = typeof BaseDecoder

let areInUse: Promise<void> | undefined

/** Puts the bounded decoders in the place of the library's own, which unpack whatever a block holds. */
export function useBoundedDecoders(): Promise<void> {
  areInUse ??= putInPlace()
  return areInUse
}

async function putInPlace(): Promise<void> {
  const put = (cases: number | number[], load: () => Promise<DecoderClass>) =>
    addDecoder(cases, async () => summedInOrder(await load()), parametersOf as never)
  const ofLibrary = (await getDecoder(7, {} as Parameters)).constructor as DecoderClass
  put(5, async () => BoundedLzw)
  put([8, 32946], async () => BoundedInflate)
  put(32773, async () => BoundedPackBits)
  put(7, async () => (await import('./tiff-jpeg')).boundedJpeg(ofLibrary))
  put(34887, async () => (await import('./tiff-lerc')).BoundedLerc)
  put(50000, async () => (await import('./tiff-zstd')).readyZstd())
}

/** Directories of images whose numbers stand with their most significant byte first. */
const bigEndian = new WeakSet<ImageFileDirectory>()
/** Tells, before an image is read, that its numbers stand the other way round. */
export const noteBigEndian = (directory: ImageFileDirectory): void => {
  bigEndian.add(directory)
}

/** What a decoder is told of the image, with what some need besides: the library gives each only its own. */
async function parametersOf(directory: ImageFileDirectory) {
  const load = async (name: string) =>
    directory.hasTag(name as never) ? directory.loadValue(name as never) : undefined
  const isTiled = !directory.hasTag('StripOffsets')
  return {
    tileWidth: await load(isTiled ? 'TileWidth' : 'ImageWidth'),
    tileHeight: isTiled
      ? await load('TileLength')
      : ((await load('RowsPerStrip')) ?? (await load('ImageLength'))),
    planarConfiguration: await load('PlanarConfiguration'),
    bitsPerSample: await load('BitsPerSample'),
    predictor: (await load('Predictor')) ?? 1,
    JPEGTables: await load('JPEGTables'),
    LercParameters: await load('LercParameters'),
    isBigEndian: bigEndian.has(directory),
  }
}

/**
 * The library adds differences up in the machine's own order, which is little-endian everywhere that this runs: numbers of the other
 * order are turned round before, and back after.
 */
function summedInOrder(Decoder: DecoderClass): DecoderClass {
  return class extends Decoder {
    private get turnedBytes(): number {
      const { predictor, bitsPerSample, isBigEndian } = this.parameters as Parameters & {
        isBigEndian?: boolean
      }
      const bits = typeof bitsPerSample === 'number' ? bitsPerSample : bitsPerSample[0]!
      return predictor === 2 && isBigEndian ? bits / 8 : 1
    }
    override async decodeBlock(packed: ArrayBuffer): Promise<ArrayBufferLike> {
      return turned(await super.decodeBlock(packed), this.turnedBytes)
    }
    override async decode(packed: ArrayBuffer): Promise<ArrayBufferLike> {
      return turned(await super.decode(packed), this.turnedBytes)
    }
  }
}

/** Turns the bytes of each number round, in place. */
function turned(block: ArrayBufferLike, bytesPerNumber: number): ArrayBufferLike {
  const bytes = new Uint8Array(block)
  if (bytesPerNumber > 1)
    for (let at = 0; at + bytesPerNumber <= bytes.length; at += bytesPerNumber)
      bytes.subarray(at, at + bytesPerNumber).reverse()
  return block
}
