import type { BaseDecoder } from 'geotiff'

/** Bytes that one tile or strip may unpack to, at most. */
export const MOST_BLOCK_BYTES = 256 * 2 ** 20

export type Parameters = ConstructorParameters<typeof BaseDecoder>[0]

/** Bytes that a block of these dimensions holds, and so the most that it may unpack to. */
export function blockBytes({
  tileWidth,
  tileHeight,
  bitsPerSample,
  planarConfiguration,
}: Parameters): number {
  const bits = typeof bitsPerSample === 'number' ? [bitsPerSample] : Array.from(bitsPerSample)
  const pixelBits = planarConfiguration === 2 ? bits[0]! : bits.reduce((sum, b) => sum + b, 0)
  return Math.min(Math.ceil((tileWidth * pixelBits) / 8) * tileHeight, MOST_BLOCK_BYTES)
}
