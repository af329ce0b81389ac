import { ed25519 } from '@noble/curves/ed25519.js'
import { hkdf } from '@noble/hashes/hkdf.js'
import { sha256 } from '@noble/hashes/sha2.js'
import { fromBase64Url, toBase64Url } from '../files/carry/base64-url'

/** What a hand must hold to take part in a shared plan: whoever lacks `write` can read, and no more. */
export interface PlanKeys {
  /** Seals all content: 32 bytes. */
  readonly seal: Uint8Array
  /** Tells whose word counts: the public half of `write`, 32 bytes. */
  readonly writer: Uint8Array
  /** Admits hands that write: a secret of 32 bytes; null for whoever only reads. */
  readonly write: Uint8Array | null
}

const random = (length: number): Uint8Array => crypto.getRandomValues(new Uint8Array(length))

export function makeKeys(): PlanKeys {
  const write = random(32)
  return { seal: random(32), write, writer: ed25519.getPublicKey(write) }
}

/** What stands in the address before the keys. It is the fragment, which browsers send to no server. */
const MARK = 'join='

/** The fragment that lets a person join: with the key to write, or only to read. */
export function invitation({ seal, write, writer }: PlanKeys, mayWrite: boolean): string {
  if (mayWrite && !write) throw new Error('who only reads invites nobody to write')
  return `${MARK}${mayWrite ? 'w' : 'r'}${toBase64Url(seal)}${toBase64Url(mayWrite ? write! : writer)}`
}

/** The keys in a fragment; undefined where it has none, null where what it has did not come whole. */
export function keysOfInvitation(fragment: string): PlanKeys | null | undefined {
  const text = fragment.replace(/^#/, '')
  if (!text.startsWith(MARK)) return undefined
  const way = text[MARK.length]
  const seal = fromBase64Url(text.slice(MARK.length + 1, MARK.length + 44))
  const other = fromBase64Url(text.slice(MARK.length + 44))
  if (seal?.length !== 32 || other?.length !== 32 || (way !== 'w' && way !== 'r')) return null
  return way === 'w'
    ? { seal, write: other, writer: ed25519.getPublicKey(other) }
    : { seal, write: null, writer: other }
}

const derived = (secret: Uint8Array, what: string): string =>
  toBase64Url(hkdf(sha256, secret, undefined, new TextEncoder().encode(`fieldpair ${what}`), 16))

/** The name of the plan on a box: it follows from the keys, says nothing, and nobody guesses it (128 bits). */
export const tagOf = ({ seal }: PlanKeys): string => derived(seal, 'tag')

/** What the box asks for before it lets somebody read, and before it lets somebody write. It learns no key by them. */
export const passOf = ({
  seal,
  write,
}: PlanKeys): { readonly read: string; readonly write: string | null } => ({
  read: derived(seal, 'read'),
  write: write && derived(write, 'write'),
})
