import { xchacha20poly1305 } from '@noble/ciphers/chacha.js'
import { ed25519 } from '@noble/curves/ed25519.js'
import { sha256 } from '@noble/hashes/sha2.js'
import { deflateSync } from 'fflate'
import { toBase64Url } from '../files/carry/base64-url'
import { inflatedUpTo } from '../files/inflated'
import { joined } from '../files/joined-bytes'
import type { PlanKeys } from './plan-keys'

/** Format of an envelope: the only one so far. */
const VERSION = 1
const [KEY, SIGNATURE, NONCE] = [32, 64, 24]
const HEAD = 1 + KEY + SIGNATURE + SIGNATURE + NONCE
/** What an envelope holds unpacks to no more than this, bytes: more is a slip or a trick. */
const MOST_BYTES = 32 * 1024 * 1024
/** A box takes no more at once, bytes, of which some are for the name that goes along: see the box's configuration. */
const MOST_SEALED_BYTES = 8 * 1024 * 1024 - 1024

/** A hand that may write: made anew at each visit of the page, and admitted by whoever holds the plan's key to write. */
export interface SigningHand {
  /** The name of the hand in the journal: it follows from its key, so that nobody can take it for another's. */
  readonly name: string
  readonly secret: Uint8Array
  readonly key: Uint8Array
  /** The plan's key to write has signed the hand's key. */
  readonly admitted: Uint8Array
}

/** Whoever has a key that gives this name is the hand: 128 bits of its hash. */
export const handName = (key: Uint8Array): string => `k${toBase64Url(sha256(key).subarray(0, 16))}`

export function makeHand(write: Uint8Array): SigningHand {
  const secret = crypto.getRandomValues(new Uint8Array(32))
  const key = ed25519.getPublicKey(secret)
  return { name: handName(key), secret, key, admitted: ed25519.sign(key, write) }
}

/** Seals a value as {@link sealed} does; undefined where a box takes no envelope of that size, or others would not unpack it. */
export function sealedIfSmall(value: unknown, hand: SigningHand, keys: PlanKeys): Uint8Array | undefined {
  const plain = new TextEncoder().encode(JSON.stringify(value))
  if (plain.length > MOST_BYTES) return undefined
  const bytes = sealedText(plain, hand, keys)
  return bytes.length > MOST_SEALED_BYTES ? undefined : bytes
}

/** Seals a value for the hands of one plan, and signs it. XChaCha20-Poly1305 with a nonce by chance, Ed25519 (RFC 8032). */
export const sealed = (value: unknown, hand: SigningHand, keys: PlanKeys): Uint8Array =>
  sealedText(new TextEncoder().encode(JSON.stringify(value)), hand, keys)

function sealedText(plain: Uint8Array, hand: SigningHand, keys: PlanKeys): Uint8Array {
  const packed = deflateSync(plain, { level: 6 })
  const nonce = crypto.getRandomValues(new Uint8Array(NONCE))
  const box = joined([nonce, xchacha20poly1305(keys.seal, nonce, hand.key).encrypt(packed)])
  return joined([Uint8Array.of(VERSION), hand.key, hand.admitted, ed25519.sign(box, hand.secret), box])
}

export interface Opened {
  /** The hand that signed. */
  readonly hand: string
  readonly value: unknown
}

/** Hands whose admission was found good, by plan: looked at once each. */
const admitted = new WeakMap<PlanKeys, Set<string>>()

/** What an envelope holds, where a hand that may write has signed it; else why it is refused, in a sentence. */
export function opened(bytes: Uint8Array, keys: PlanKeys): Opened | string {
  if (bytes.length < HEAD || bytes[0] !== VERSION)
    return 'Something came in that no program of this kind sent.'
  const at = (from: number, length: number) => bytes.subarray(from, from + length)
  const key = at(1, KEY)
  const admission = at(1 + KEY, SIGNATURE)
  const signature = at(1 + KEY + SIGNATURE, SIGNATURE)
  const box = bytes.subarray(HEAD - NONCE)
  const known = admitted.get(keys) ?? new Set<string>()
  admitted.set(keys, known)
  const hand = handName(key)
  try {
    if (!known.has(hand) && !ed25519.verify(admission, key, keys.writer))
      return 'A hand that nobody admitted wants to write: it is not heard.'
    known.add(hand)
    if (!ed25519.verify(signature, box, key)) return 'Somebody wrote in the name of another: it is not heard.'
    const packed = xchacha20poly1305(keys.seal, box.subarray(0, NONCE), key).decrypt(box.subarray(NONCE))
    const plain = inflatedUpTo(packed, MOST_BYTES)
    if (!plain) return 'What a hand wrote did not come whole: it is left out.'
    return { hand, value: JSON.parse(new TextDecoder().decode(plain)) }
  } catch {
    return 'What a hand wrote cannot be opened: it is left out.'
  }
}
