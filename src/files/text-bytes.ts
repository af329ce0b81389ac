import { bad, ok, type Problem, type Result } from '../problem'

/**
 * The text that a file's bytes are: UTF-8, or UTF-16 where its mark says so. Bytes of any other encoding are refused: read with
 * holes, the text would be saved with holes.
 *
 * Marks: The Unicode Standard 15.0, section 23.8, table 23-6.
 */
export function textOf(bytes: Uint8Array): Result<string> {
  const [first, second] = bytes
  if (first === 0xff && second === 0xfe) return decoded(bytes, 'utf-16le')
  if (first === 0xfe && second === 0xff) return decoded(bytes, 'utf-16be')
  // JSON begins with a character of ASCII: a zero beside it is half of one in UTF-16.
  if (bytes.length > 1 && (first === 0 || second === 0)) return bad(notUtf8('file'))
  return decoded(bytes, 'utf-8')
}

function decoded(bytes: Uint8Array, encoding: 'utf-8' | 'utf-16le' | 'utf-16be'): Result<string> {
  try {
    return ok(new TextDecoder(encoding, { fatal: true }).decode(bytes))
  } catch {
    const before = new TextDecoder(encoding).decode(bytes).split('\uFFFD', 1)[0] ?? ''
    return bad(notUtf8(`line ${before.split('\n').length}`))
  }
}

const notUtf8 = (at: string): Problem => ({
  code: 'not-utf-8',
  at,
  message: 'This text is not UTF-8: save it as UTF-8 in the program that it comes from, then open it again.',
})
