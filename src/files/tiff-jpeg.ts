import type { BaseDecoder } from 'geotiff'
import { BlockTooLong } from './bounded-bytes'
import { blockBytes } from './tiff-block'

const MARKER = 0xff
/** Frames: all of C0 to CF but the tables C4, C8 and CC. */
const isFrame = (kind: number) => kind >= 0xc0 && kind <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(kind)

/** The library's decoder, which is handed only pictures no larger than their block. Source: ITU-T T.81 (1992), annex B. */
export function boundedJpeg(Decoder: typeof BaseDecoder): typeof BaseDecoder {
  return class extends Decoder {
    override decodeBlock(packed: ArrayBuffer): Promise<ArrayBufferLike> | ArrayBufferLike {
      const bytes = new Uint8Array(packed)
      const view = new DataView(packed)
      for (let at = 2; at + 9 < bytes.length && bytes[at] === MARKER; at += 2 + view.getUint16(at + 2)) {
        if (!isFrame(bytes[at + 1]!)) continue
        // A picture of fewer bands than a block has room for may be padded to whole blocks of 8 or 16.
        const padded = (px: number) => Math.ceil(px / 16) * 16
        const { tileWidth, tileHeight } = this.parameters
        const [height, width] = [view.getUint16(at + 5), view.getUint16(at + 7)]
        if (width > padded(tileWidth) || height > padded(tileHeight)) throw new BlockTooLong()
        break
      }
      const decoded = super.decodeBlock(packed)
      return Promise.resolve(decoded).then((block) => {
        if (block.byteLength > blockBytes(this.parameters)) throw new BlockTooLong()
        return block
      })
    }
  }
}
