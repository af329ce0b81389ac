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
    const out = new BoundedBytes(packed.byteLength, blockBytes(this.parameters))
    const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate'))
    const reader = stream.getReader()
    try {
      for (;;) {
        const { done, value } = await reader.read()
        if (done) return out.written().buffer
        out.append(value)
      }
    } finally {
      await reader.cancel()
    }
  }
}

/** Bytes that grow as they are written, up to a bound. */
class BoundedBytes {
  bytes: Uint8Array<ArrayBuffer>
  length = 0
  private readonly most: number

  constructor(packedLength: number, most: number) {
    // Not the most at once: a strip may be said to have more rows than the image.
    this.bytes = new Uint8Array(Math.min(most, packedLength * 4 + 4096))
    this.most = most
  }

  /** Makes room for so many more. */
  reserve(more: number): void {
    const needed = this.length + more
    if (needed > this.most) throw new BlockTooLong()
    if (needed <= this.bytes.length) return
    const longer = new Uint8Array(Math.min(this.most, Math.max(needed, this.bytes.length * 2)))
    longer.set(this.bytes)
    this.bytes = longer
  }

  append(part: Uint8Array): void {
    this.reserve(part.length)
    this.bytes.set(part, this.length)
    this.length += part.length
  }

  written(): Uint8Array<ArrayBuffer> {
    return this.bytes.slice(0, this.length)
  }
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
  const out = new BoundedBytes(packed.length, most)
  let next = FIRST_FREE
  let width = 9
  let previous = -1
  let bits = 0
  let held = 0

  /** Writes a string from its end to its start, with room for so many bytes after it, and gives its first byte. */
  const write = (code: number, extra: number): number => {
    out.reserve(length[code]! + extra)
    const start = out.length
    out.length += length[code]!
    let c = code
    for (let at = out.length - 1; at >= start; at--) {
      out.bytes[at] = suffix[c]!
      c = prefix[c]!
    }
    return out.bytes[start]!
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
    if (fresh) out.bytes[out.length++] = first
    if (previous >= 0 && next < 4096) {
      prefix[next] = previous
      suffix[next] = first
      length[next] = length[previous]! + 1
      next++
    }
    previous = code
    if (next + 1 >= 1 << width && width < 12) width++
  }
  return out.written()
}

class BoundedLzw extends BaseDecoder {
  override decodeBlock(packed: ArrayBuffer): ArrayBuffer {
    return unpackLzw(new Uint8Array(packed), blockBytes(this.parameters)).buffer
  }
}

/**
 * Unpacks PackBits into at most so many bytes: a count up to 127 precedes one more bytes than it says, one from 129 a byte to be
 * written 257 less the count times. Source: TIFF 6.0 (Adobe 1992), section 9.
 */
export function unpackPackBits(packed: Uint8Array, most: number): Uint8Array<ArrayBuffer> {
  const out = new BoundedBytes(packed.length, most)
  for (let at = 0; at < packed.length; ) {
    const count = packed[at++]!
    if (count < 128) {
      out.append(packed.subarray(at, at + count + 1))
      at += count + 1
    } else if (count > 128) {
      out.reserve(257 - count)
      out.bytes.fill(packed[at++] ?? 0, out.length, out.length + 257 - count)
      out.length += 257 - count
    }
  }
  return out.written()
}

class BoundedPackBits extends BaseDecoder {
  override decodeBlock(packed: ArrayBuffer): ArrayBuffer {
    return unpackPackBits(new Uint8Array(packed), blockBytes(this.parameters)).buffer
  }
}

/** Ways of packing that are read: none, LZW, deflate by two numbers, PackBits. */
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
  addDecoder(32773, async () => BoundedPackBits)
}
