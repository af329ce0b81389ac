import { BaseDecoder } from 'geotiff'
import { ZSTDDecoder } from 'zstddec'
import { blockBytes } from './tiff-block'

const zstd = new ZSTDDecoder()

/** Unpacks Zstandard into the room that a block has: what a frame claims of itself reserves nothing. Source: RFC 8878 (2021). */
class BoundedZstd extends BaseDecoder {
  override decodeBlock(packed: ArrayBuffer): ArrayBufferLike {
    const bytes = zstd.decode(new Uint8Array(packed), blockBytes(this.parameters))
    if (bytes.length === 0) throw new RangeError('Zstandard block that does not unpack')
    return bytes.buffer
  }
}

/** The decoder, once its wasm is ready. */
export async function readyZstd(): Promise<typeof BoundedZstd> {
  await zstd.init()
  return BoundedZstd
}

/** Unpacks into at most so many bytes. */
export async function unpackZstd(packed: Uint8Array, most: number): Promise<Uint8Array> {
  await zstd.init()
  return zstd.decode(packed, most)
}
