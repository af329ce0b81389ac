import { seeded } from '../../budget/seeded'
import { fromBase45, toBase45 } from './base45'

/**
 * A run of codes that carries bytes from a screen to a camera. The bytes are cut into blocks; each code holds some blocks laid over one
 * another (added bit by bit), which ones follow from its number. The first codes hold one block each; after them any that come are as
 * good as any other, so that a code that was missed need not be waited for: a random linear code over GF(2).
 * A receiver needs as many codes as there are blocks, and on the average 1.6 more.
 *
 * Source: M. Luby et al., RFC 5053, section 5, for the ways of such codes; the chance that n random rows over GF(2) are independent is
 * ∏(1 − 2^−k), e.g. R. Lidl and H. Niederreiter, Finite Fields (from memory).
 */
export interface CodeRun {
  /** Blocks that the bytes are cut into. */
  readonly blocks: number
  /** The text of a code, by its number from 0 on, without end. */
  readonly text: (number: number) => string
}

/** What a camera reads well off a screen: 600 letters of the alphanumeric kind, a symbol of 73 modules a side with 15 % of error correction. */
const BLOCK_BYTES = 352
/** Marks a code of such a run. */
const MARK = 'FP:'
/** Length of the whole, its check, the code's number. */
const HEAD_BYTES = 4 + 4 + 2
/** More is for a file. */
export const MOST_BYTES = 500_000
const MOST_NUMBER = 0xffff

/** @throws RangeError for more than `MOST_BYTES` */
export function codeRun(bytes: Uint8Array): CodeRun {
  if (bytes.length > MOST_BYTES) throw new RangeError(`${bytes.length} bytes are too many for a run of codes`)
  const blocks = Math.max(1, Math.ceil(bytes.length / BLOCK_BYTES))
  const check = checkOf(bytes)
  return {
    blocks,
    text: (number) => {
      const n = number % (MOST_NUMBER + 1)
      const code = new Uint8Array(HEAD_BYTES + BLOCK_BYTES)
      const view = new DataView(code.buffer)
      view.setUint32(0, bytes.length)
      view.setUint32(4, check)
      view.setUint16(8, n)
      const sum = code.subarray(HEAD_BYTES)
      const isIn = rowOf(n, blocks, check)
      for (let block = 0; block < blocks; block++) {
        if (!has(isIn, block)) continue
        for (let i = 0, at = block * BLOCK_BYTES; i < BLOCK_BYTES && at < bytes.length; i++, at++)
          sum[i]! ^= bytes[at]!
      }
      return MARK + toBase45(code)
    },
  }
}

/** How far the codes of a run have come in. */
export interface Received {
  /** Codes that were of use. */
  readonly have: number
  readonly need: number
  /** The whole, once it is there. */
  readonly bytes: Uint8Array | undefined
}

/** What a code holds: a bit for each block that is in it, then their sum, all in words so that rows add quickly. */
type Row = Uint32Array
const BLOCK_WORDS = BLOCK_BYTES / 4
const wordsFor = (blocks: number) => Math.ceil(blocks / 32)
const has = (row: Row, block: number) => ((row[block >>> 5]! >>> (block & 31)) & 1) === 1

/** Puts the codes of a run together, in whatever order they come, and however often. Codes of another run begin anew. */
export class CodeCollector {
  #key = ''
  #blocks = 0
  #length = 0
  #check = 0
  /** By the first block that is in them. */
  #rows = new Map<number, Row>()

  /** Undefined for a text that is no code of a run. */
  take(text: string): Received | undefined {
    if (!text.startsWith(MARK)) return undefined
    const code = fromBase45(text.slice(MARK.length))
    if (code?.length !== HEAD_BYTES + BLOCK_BYTES) return undefined
    const view = new DataView(code.buffer)
    const [length, check, number] = [view.getUint32(0), view.getUint32(4), view.getUint16(8)]
    if (length > MOST_BYTES) return undefined
    this.#beginWith(length, check)
    const bits = rowOf(number, this.#blocks, check)
    const row = new Uint32Array(bits.length + BLOCK_WORDS)
    row.set(bits)
    row.set(new Uint32Array(code.slice(HEAD_BYTES).buffer), bits.length)
    this.#fold(row)
    const have = this.#rows.size
    return { have, need: this.#blocks, bytes: have === this.#blocks ? this.#whole() : undefined }
  }

  #beginWith(length: number, check: number) {
    const key = `${length} ${check}`
    if (key === this.#key) return
    this.#key = key
    this.#blocks = Math.max(1, Math.ceil(length / BLOCK_BYTES))
    this.#length = length
    this.#check = check
    this.#rows = new Map()
  }

  /** Takes out of a row what is known already; keeps what is left of it. */
  #fold(row: Row) {
    for (let first = 0; first < this.#blocks; first++) {
      if (!has(row, first)) continue
      const known = this.#rows.get(first)
      if (!known) {
        this.#rows.set(first, row)
        return
      }
      add(row, known)
    }
  }

  #whole(): Uint8Array | undefined {
    const bytes = new Uint8Array(this.#blocks * BLOCK_BYTES)
    for (let first = this.#blocks - 1; first >= 0; first--) {
      const row = this.#rows.get(first)!
      for (let later = first + 1; later < this.#blocks; later++)
        if (has(row, later)) add(row, this.#rows.get(later)!)
      bytes.set(new Uint8Array(row.buffer, 4 * wordsFor(this.#blocks)), first * BLOCK_BYTES)
    }
    const whole = bytes.slice(0, this.#length)
    if (checkOf(whole) === this.#check) return whole
    // A code was misread: all of them are in doubt.
    this.#rows = new Map()
    return undefined
  }
}

function add(row: Row, other: Row) {
  for (let i = 0; i < row.length; i++) row[i]! ^= other[i]!
}

/** Which blocks a code holds: the first ones one each, all later ones about half of them, by numbers that both ends make alike. */
function rowOf(number: number, blocks: number, check: number): Row {
  const row = new Uint32Array(wordsFor(blocks))
  const put = (block: number) => {
    row[block >>> 5]! |= 1 << (block & 31)
  }
  if (number < blocks) {
    put(number)
    return row
  }
  // Not of a linear generator: with 32 bits of state its rows would be of rank 32 at most, and no long run would come together.
  const next = seeded(check ^ Math.imul(number + 1, 0x9e3779b1))
  for (let block = 0; block < blocks; block++) if (next() < 0.5) put(block)
  return row
}

/** CRC-32 as in ISO/IEC 3309: tells a misread run, no more. */
function checkOf(bytes: Uint8Array): number {
  let check = 0xffffffff
  for (const byte of bytes) {
    check ^= byte
    for (let bit = 0; bit < 8; bit++) check = check & 1 ? (check >>> 1) ^ 0xedb88320 : check >>> 1
  }
  return ~check >>> 0
}
