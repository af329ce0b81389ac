/** A block that unpacks to more than the file says it holds: a bomb, or a broken file. */
export class BlockTooLong extends Error {}

/** Bytes that grow as they are written, up to a bound. */
export class BoundedBytes {
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

/** Inflates into at most so many bytes: `deflate` with the head and foot of zlib, or `gzip`. */
export async function inflateBounded(
  packed: Uint8Array<ArrayBuffer>,
  most: number,
  format: CompressionFormat = 'deflate',
): Promise<Uint8Array<ArrayBuffer>> {
  const out = new BoundedBytes(packed.byteLength, most)
  const reader = new Blob([packed]).stream().pipeThrough(new DecompressionStream(format)).getReader()
  try {
    for (;;) {
      const { done, value } = await reader.read()
      if (done) return out.written()
      out.append(value)
    }
  } finally {
    await reader.cancel()
  }
}
