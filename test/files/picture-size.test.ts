import { expect, test } from 'vitest'
import { pictureSize } from '../../src/files/picture-size'

const bytes = (...parts: readonly (string | readonly number[])[]): ArrayBuffer => {
  const all = parts.flatMap((part) =>
    typeof part === 'string' ? [...part].map((c) => c.charCodeAt(0)) : part,
  )
  return Uint8Array.from(all).buffer
}
const riff = (chunk: string, ...rest: number[]) => bytes('RIFF', [0, 0, 0, 0], 'WEBP', chunk, rest)

// Headers written out by hand from the formats' own descriptions: see picture-size.ts. Each says 800 × 600 (0x0320 × 0x0258).
const HEADERS: readonly (readonly [string, ArrayBuffer])[] = [
  ['PNG', bytes([0x89], 'PNG\r\n\x1a\n', [0, 0, 0, 13], 'IHDR', [0, 0, 3, 0x20, 0, 0, 2, 0x58])],
  [
    'JPEG, after a comment and a Huffman table',
    bytes([
      0xff, 0xd8, 0xff, 0xfe, 0, 4, 1, 2, 0xff, 0xc4, 0, 3, 0, 0xff, 0xc2, 0, 17, 8, 2, 0x58, 3, 0x20, 3,
    ]),
  ],
  ['WebP, lossy', riff('VP8 ', 0, 0, 0, 0, 0, 0, 0, 0x9d, 0x01, 0x2a, 0x20, 0x03, 0x58, 0x02)],
  // 14 bits of width − 1 = 799, then 14 of height − 1 = 599: 599 · 2¹⁴ + 799 = 0x0095C31F.
  ['WebP, lossless', riff('VP8L', 0, 0, 0, 0, 0x2f, 0x1f, 0xc3, 0x95, 0x00)],
  ['WebP, extended', riff('VP8X', 10, 0, 0, 0, 0, 0, 0, 0, 0x1f, 0x03, 0x00, 0x57, 0x02, 0x00)],
]

test.each(HEADERS)('%s tells its size in its header', (_kind, header) => {
  expect(pictureSize(header)).toEqual({ width: 800, height: 600 })
})

test.each(HEADERS)('%s that ends too soon tells nothing', (_kind, header) => {
  expect(pictureSize(header.slice(0, -5))).toBeUndefined()
})

test('what is no picture has no size', () => {
  for (const other of [
    bytes(),
    bytes('GIF89a'),
    bytes('<!doctype html>'),
    bytes('RIFF', [0, 0, 0, 0], 'WAVE'),
  ])
    expect(pictureSize(other)).toBeUndefined()
})
