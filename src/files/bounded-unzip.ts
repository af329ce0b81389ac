import { bad, type Result } from '../problem'
import { joined } from './joined-bytes'

/** How many times its packed size a file may unpack to: more is a trap. */
const MOST_RATIO = 200
const PIECE = 1 << 14

/**
 * Files of an archive, by their names: those that are wanted, as long as they come to no more than so many bytes together. What each claims to
 * unpack to is checked before, and what it does while it is unpacked.
 *
 * Source: PKWARE, .ZIP File Format Specification (APPNOTE) 6.3.
 */
export async function unzipBounded(
  bytes: Uint8Array,
  isWanted: (name: string) => boolean,
  mostBytes: number,
): Promise<Result<ReadonlyMap<string, Uint8Array>>> {
  const { Unzip, UnzipInflate } = await import('fflate')
  const found = new Map<string, Uint8Array>()
  let size = 0
  let fault: Result<never> | undefined
  const refused = (code: string, message: string) => bad({ code, at: '', message })
  const tooLarge = refused(
    'too-large',
    'The file unpacks to more than can be read: take the part that you need.',
  )
  const broken = refused('broken-zip', 'The file is broken: it cannot be unpacked. Copy it again.')
  const unzip = new Unzip((file) => {
    if (!isWanted(file.name)) return
    if ((file.originalSize ?? 0) > mostBytes) {
      fault = tooLarge
      return
    }
    const parts: Uint8Array[] = []
    file.ondata = (error, data, isLast) => {
      if (error) fault ??= broken
      size += data?.length ?? 0
      if (size > mostBytes || size > MOST_RATIO * bytes.length + 1e6) {
        fault ??= tooLarge
        file.terminate()
      } else if (data) parts.push(data)
      if (isLast) found.set(file.name, joined(parts))
    }
    file.start()
  })
  unzip.register(UnzipInflate)
  try {
    for (let at = 0; at < bytes.length && !fault; at += PIECE)
      unzip.push(bytes.subarray(at, at + PIECE), at + PIECE >= bytes.length)
  } catch {
    fault ??= broken
  }
  return fault ?? { ok: true, value: found }
}
