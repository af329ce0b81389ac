import { bad, ok, type Result } from '../problem'
import type { ByteSource } from './byte-source'

/** Bytes of one value of each field type; TIFF 6.0 (Adobe 1992), section 2, and the BigTIFF types 16 to 18. */
const TYPE_BYTES: Readonly<Record<number, number>> = {
  1: 1,
  2: 1,
  3: 2,
  4: 4,
  5: 8,
  6: 1,
  7: 1,
  8: 2,
  9: 4,
  10: 8,
  11: 4,
  12: 8,
  13: 4,
  16: 8,
  17: 8,
  18: 8,
}
const TEXT = 2
const MOST_TEXT = 1e6
const MOST_DIRECTORIES = 64
const MOST_ENTRIES = 1000

/**
 * Walks the directories of a TIFF and finds what would lead a reader astray: places beyond the end of the file, counts that no
 * file of this size can hold, directories in a circle. Gives the number of images.
 *
 * A library that trusts these figures reserves memory for what a hostile file only claims.
 */
export async function checkTiff(source: ByteSource): Promise<Result<number>> {
  const fault = (code: string, what: string) => bad({ code, at: source.name, message: `The file ${what}` })
  const cut = fault('truncated', 'is cut short: it points to data beyond its end. Copy or download it again.')

  const bytesAt = async (offset: number, length: number): Promise<DataView | null> => {
    if (!(offset >= 0 && length >= 0 && offset + length <= source.sizeBytes)) return null
    const bytes = await source.read(offset, length)
    return bytes.length === length ? new DataView(bytes.buffer, bytes.byteOffset, length) : null
  }

  const head = await bytesAt(0, Math.min(16, source.sizeBytes))
  const order = head && head.byteLength >= 8 ? head.getUint16(0) : 0
  const little = order === 0x4949
  const magic = order === 0x4949 || order === 0x4d4d ? head!.getUint16(2, little) : 0
  const big = magic === 43
  if (magic !== 42 && !big)
    return fault('not-tiff', 'is not a TIFF file: its first bytes are not those of one.')
  if (big && head!.byteLength < 16) return cut

  const offsetAt = (view: DataView, at: number) =>
    big ? Number(view.getBigUint64(at, little)) : view.getUint32(at, little)
  const entryBytes = big ? 20 : 12
  const inlineBytes = big ? 8 : 4
  const countBytes = big ? 8 : 2

  const seen = new Set<number>()
  let place = offsetAt(head!, big ? 8 : 4)
  while (place !== 0) {
    if (seen.has(place) || seen.size >= MOST_DIRECTORIES) {
      return fault('tiff-directories', 'has directories that run in a circle, or too many of them.')
    }
    seen.add(place)
    const countView = await bytesAt(place, countBytes)
    if (!countView) return cut
    const entries = big ? Number(countView.getBigUint64(0, little)) : countView.getUint16(0, little)
    if (entries > MOST_ENTRIES) return fault('tiff-directories', 'claims a directory of absurd length.')
    const view = await bytesAt(place + countBytes, entries * entryBytes + inlineBytes)
    if (!view) return cut
    for (let i = 0; i < entries; i++) {
      const at = i * entryBytes
      const count = big ? Number(view.getBigUint64(at + 4, little)) : view.getUint32(at + 4, little)
      const type = view.getUint16(at + 2, little)
      const bytes = (TYPE_BYTES[type] ?? 1) * count
      if (type === TEXT && count > MOST_TEXT) return fault('tiff-text', 'carries a text of absurd length.')
      if (bytes > inlineBytes && offsetAt(view, at + entryBytes - inlineBytes) + bytes > source.sizeBytes)
        return cut
    }
    place = offsetAt(view, entries * entryBytes)
  }
  return seen.size > 0 ? ok(seen.size) : fault('not-tiff', 'is a TIFF file with no image in it.')
}
