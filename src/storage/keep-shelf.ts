import { formatStores, storesOf } from '../files/parse-shelf'
import type { Stores } from '../shelf/shelf'
import { ownName } from './own-name'

type Also = Readonly<Record<'reels' | 'people', number>>

interface Kept extends Stores {
  readonly also: Also
}

export interface ShelfStore {
  readonly onShelf: { value: Kept; subscribe(listener: (value: Kept) => void): () => void }
  readonly onShelfFailure: { value: string }
}

const key = () => ownName('fieldpair-shelf')

/** Brings back what lies on a person's shelf, and keeps every change of it. */
export function keepShelf({ onShelf, onShelfFailure }: ShelfStore): () => void {
  const kept = keptOf(read())
  if (kept) onShelf.value = kept
  let isFirst = true
  return onShelf.subscribe((shelf) => {
    // What cannot be read is not written over before the person changes something.
    if (isFirst) {
      isFirst = false
      return
    }
    try {
      localStorage.setItem(key(), JSON.stringify({ ...formatStores(shelf), also: shelf.also }))
      onShelfFailure.value = ''
    } catch {
      onShelfFailure.value =
        'This browser could not keep the shelf: it has no room, or forbids it. It stays until this page is closed.'
    }
  })
}

function keptOf(text: string | null): Kept | undefined {
  if (text === null) return undefined
  try {
    const value = JSON.parse(text)
    const stores = storesOf(value)
    return stores && { ...stores, rods: rodsOf(stores, value.also?.rods), also: alsoOf(value.also) }
  } catch {
    return undefined
  }
}

/** What lies on the shelf, as it is kept; null for nothing. */
export const keptShelfText = (): string | null => read()

/** Puts a shelf in the place of the one that is kept, where it reads. */
export function takeShelfText(text: string): void {
  if (!keptOf(text)) return
  try {
    localStorage.setItem(key(), text)
  } catch {}
}

/** Rods were once only counted. */
const rodsOf = ({ rods }: Stores, counted: unknown): Stores['rods'] =>
  rods.length === 0 && typeof counted === 'number' && Number.isInteger(counted) && counted > 0
    ? [{ id: 'rod-1-5', count: counted }]
    : rods

const alsoOf = (value: unknown): Also => {
  const count = (name: keyof Also) => {
    const given = (value as Partial<Also> | undefined)?.[name]
    return typeof given === 'number' && Number.isInteger(given) && given >= 0 ? given : 0
  }
  return { reels: count('reels'), people: count('people') }
}

function read(): string | null {
  try {
    return localStorage.getItem(key())
  } catch {
    return null
  }
}
