import { Inflate } from 'fflate'
import { joined } from './joined-bytes'

/** So much is unpacked at a time, so that what grows beyond all measure is stopped early. */
const STEP_BYTES = 4096

/**
 * What was deflated (RFC 1951); null where it did not come whole, undefined where it unpacks to more than so many bytes.
 *
 * @param dictionary what both ends know
 */
export function inflatedUpTo(
  packed: Uint8Array,
  mostBytes: number,
  dictionary?: Uint8Array,
): Uint8Array | null | undefined {
  const pieces: Uint8Array[] = []
  let length = 0
  let isWhole = false
  const inflate = new Inflate(dictionary ? { dictionary } : {}, (piece, isLast) => {
    pieces.push(piece)
    length += piece.length
    isWhole = isLast
  })
  try {
    for (let at = 0; at < packed.length && length <= mostBytes; at += STEP_BYTES)
      inflate.push(packed.subarray(at, at + STEP_BYTES), at + STEP_BYTES >= packed.length)
  } catch {
    return null
  }
  if (length > mostBytes) return undefined
  return isWhole ? joined(pieces) : null
}
