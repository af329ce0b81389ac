import { addDecoder, BaseDecoder } from 'geotiff'

/** Bytes that one tile or strip may unpack to, at most. */
export const MOST_BLOCK_BYTES = 256 * 2 ** 20

/** A block that unpacks to more than the file says it holds: a bomb, or a broken file. */
export class BlockTooLong extends Error {}

type Parameters = ConstructorParameters<typeof BaseDecoder>[0]

/** Bytes that a block of these dimensions holds, and so the most that it may unpack to. */
function blockBytes({ tileWidth, tileHeight, bitsPerSample, planarConfiguration }: Parameters): number {
  const bits = typeof bitsPerSample === 'number' ? [bitsPerSample] : Array.from(bitsPerSample)
  const pixelBits = planarConfiguration === 2 ? bits[0]! : bits.reduce((sum, b) => sum + b, 0)
  return Math.min(Math.ceil((tileWidth * pixelBits) / 8) * tileHeight, MOST_BLOCK_BYTES)
}

/** Inflates with the platform's own decompressor, and stops at the length that the block should have. */
class BoundedInflate extends BaseDecoder {
  override async decodeBlock(packed: ArrayBuffer): Promise<ArrayBuffer> {
    const most = blockBytes(this.parameters)
    const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate'))
    const reader = stream.getReader()
    const parts: Uint8Array[] = []
    let length = 0
    for (;;) {
      const { done, value } = await reader.read()
      if (done) break
      length += value.length
      if (length > most) {
        await reader.cancel()
        throw new BlockTooLong()
      }
      parts.push(value)
    }
    return joined(parts, length)
  }
}

function joined(parts: readonly Uint8Array[], length: number): ArrayBuffer {
  const whole = new Uint8Array(length)
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole.buffer
}

const CLEAR = 256
const END = 257
const FIRST_FREE = 258

/**
 * Unpacks TIFF's LZW into at most so many bytes.
 *
 * Codes of 9 to 12 bits, most significant bit first, one wider a code early. Source: TIFF 6.0 (Adobe 1992), section 13.
 */
export function unpackLzw(packed: Uint8Array, most: number): Uint8Array<ArrayBuffer> {
  const prefix = new Uint16Array(4096)
  const suffix = new Uint8Array(4096)
  const length = new Uint16Array(4096)
  for (let i = 0; i < 256; i++) {
    suffix[i] = i
    length[i] = 1
  }
  // Not the most at once: a strip may be said to have more rows than the image.
  let out = new Uint8Array(Math.min(most, packed.length * 4 + 4096))
  let written = 0
  let next = FIRST_FREE
  let width = 9
  let previous = -1
  let bits = 0
  let held = 0

  /** Writes a string from its end to its start, and gives its first byte. */
  const write = (code: number, extra: number): number => {
    const end = written + length[code]!
    if (end + extra > most) throw new BlockTooLong()
    if (end + extra > out.length) {
      const longer = new Uint8Array(Math.min(most, Math.max(end + extra, out.length * 2)))
      longer.set(out)
      out = longer
    }
    let c = code
    for (let at = end - 1; at >= written; at--) {
      out[at] = suffix[c]!
      c = prefix[c]!
    }
    const first = out[written]!
    written = end
    return first
  }

  for (let at = 0; ; ) {
    while (held < width && at < packed.length) {
      bits = ((bits << 8) | packed[at++]!) & 0xffffff
      held += 8
    }
    if (held < width) break
    const code = (bits >>> (held - width)) & ((1 << width) - 1)
    held -= width
    if (code === END) break
    if (code === CLEAR) {
      next = FIRST_FREE
      width = 9
      previous = -1
      continue
    }
    if (code > next || (code === next && previous < 0)) throw new RangeError('LZW code out of order')
    const fresh = code === next
    const first = write(fresh ? previous : code, fresh ? 1 : 0)
    if (fresh) out[written++] = first
    if (previous >= 0 && next < 4096) {
      prefix[next] = previous
      suffix[next] = first
      length[next] = length[previous]! + 1
      next++
    }
    previous = code
    if (next + 1 >= 1 << width && width < 12) width++
  }
  return out.slice(0, written)
}

class BoundedLzw extends BaseDecoder {
  override decodeBlock(packed: ArrayBuffer): ArrayBuffer {
    return unpackLzw(new Uint8Array(packed), blockBytes(this.parameters)).buffer
  }
}

/** Ways of packing that are read: none, LZW, deflate (two numbers), PackBits, which can grow by 64 at most. */
export const COMPRESSIONS = new Map([
  [1, 'none'],
  [5, 'LZW'],
  [8, 'deflate'],
  [32946, 'deflate'],
  [32773, 'PackBits'],
])

/** Puts the bounded decoders in the place of the library's own, which unpack whatever a block holds. */
export function useBoundedDecoders(): void {
  addDecoder(5, async () => BoundedLzw)
  addDecoder([8, 32946], async () => BoundedInflate)
}
