/** Width and height of a picture in cells. */
export interface PictureSize {
  readonly width: number
  readonly height: number
}

const ascii = (bytes: DataView, at: number, length: number): string =>
  at + length <= bytes.byteLength
    ? String.fromCharCode(...Array.from({ length }, (_, i) => bytes.getUint8(at + i)))
    : ''

/**
 * The size that a picture's header states, so that one too large is refused before it is unpacked. Undefined where it is neither PNG,
 * JPEG nor WebP, or ends too soon.
 *
 * Sources: PNG, W3C Recommendation, 3rd ed., §11.2.1 (IHDR); ITU-T T.81 (1992), B.2.2 (frame header of JPEG); RFC 9649 (2024),
 * §2.5–2.7, with RFC 6386 §9.1 for VP8 (WebP).
 */
export function pictureSize(buffer: ArrayBuffer): PictureSize | undefined {
  const bytes = new DataView(buffer)
  try {
    if (ascii(bytes, 0, 8) === '\x89PNG\r\n\x1a\n' && ascii(bytes, 12, 4) === 'IHDR')
      return { width: bytes.getUint32(16), height: bytes.getUint32(20) }
    if (ascii(bytes, 0, 2) === '\xff\xd8') return jpegSize(bytes)
    if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 4) === 'WEBP') return webpSize(bytes)
  } catch (error) {
    // It ends within its header.
    if (!(error instanceof RangeError)) throw error
  }
  return undefined
}

/** The first frame header among the segments: 0xC0…0xCF, but for the tables DHT, JPG and DAC. */
function jpegSize(bytes: DataView): PictureSize | undefined {
  for (let at = 2; bytes.getUint8(at) === 0xff; at += 2 + bytes.getUint16(at + 2)) {
    const marker = bytes.getUint8(at + 1)
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return { width: bytes.getUint16(at + 7), height: bytes.getUint16(at + 5) }
  }
  return undefined
}

function webpSize(bytes: DataView): PictureSize | undefined {
  const threeBytes = (at: number) => bytes.getUint16(at, true) + bytes.getUint8(at + 2) * 65_536
  switch (ascii(bytes, 12, 4)) {
    case 'VP8 ':
      return { width: bytes.getUint16(26, true) & 0x3fff, height: bytes.getUint16(28, true) & 0x3fff }
    case 'VP8L': {
      const packed = bytes.getUint32(21, true)
      return { width: (packed & 0x3fff) + 1, height: ((packed >>> 14) & 0x3fff) + 1 }
    }
    case 'VP8X':
      return { width: threeBytes(24) + 1, height: threeBytes(27) + 1 }
    default:
      return undefined
  }
}
