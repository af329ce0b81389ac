import { encode } from 'uqr'

/** The picture's modules a side, with the white edge about them, and its black ones as a path of that many units. */
export interface Picture {
  readonly side: number
  readonly path: string
}

/** White modules that a reader needs on each side: ISO/IEC 18004, 5.3.8. */
const EDGE = 4

/**
 * Which of the eight masks lies over the modules is chosen for texts of a few words, whose modules could lie in blocks; over what is packed, which
 * looks like chance already, each is as good as the others, and trying all takes most of the time. ISO/IEC 18004, 7.8.
 */
const LONG = 200
const ANY_MASK = 0

/**
 * The picture of a text: a QR code with as much error correction as its size gives for nothing.
 *
 * @throws where the text has no room in a symbol of that version, 1 to 40
 */
export function pictureOf(text: string, maxVersion: number): Picture {
  const { size, data } = encode(text, {
    ...{ ecc: 'L', boostEcc: true, maxVersion, border: 0 },
    ...(text.length > LONG && { maskPattern: ANY_MASK }),
  })
  const rows = data.map((row, y) => {
    let path = ''
    for (let x = 0; x < size; x++) {
      if (!row[x]) continue
      const from = x
      while (row[x + 1]) x++
      path += `M${from + EDGE} ${y + EDGE}h${x + 1 - from}v1h${from - x - 1}z`
    }
    return path
  })
  return { side: size + 2 * EDGE, path: rows.join('') }
}
