import { BaseDecoder } from 'geotiff'
import { BoundedBytes, inflateBounded } from './bounded-bytes'
import { blockBytes } from './tiff-block'

/** Inflates with the platform's own decompressor, and stops at the length that the block should have. */
export class BoundedInflate extends BaseDecoder {
  override async decodeBlock(packed: ArrayBuffer): Promise<ArrayBuffer> {
    return (await inflateBounded(new Uint8Array(packed), blockBytes(this.parameters))).buffer
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

export class BoundedLzw extends BaseDecoder {
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

export class BoundedPackBits extends BaseDecoder {
  override decodeBlock(packed: ArrayBuffer): ArrayBuffer {
    return unpackPackBits(new Uint8Array(packed), blockBytes(this.parameters)).buffer
  }
}
