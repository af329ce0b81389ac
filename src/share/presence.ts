import { undirected } from '../isolated'
import { isObject } from '../schema/schema'
import { namelessHand } from './hand-names'
import type { OtherHand, Spot } from './sharing'

/** Whoever was not heard for so long is not there, ms. */
const GONE_MS = 20_000
const LONGEST_NAME = 70
const LONGEST_KEY = 200

/** What each hand tells of itself now and then. It is kept nowhere. */
export interface HereWord {
  readonly name: string
  /** The thing changed last, and the one that is selected, as keys of the journal; empty for none. */
  readonly at: string
  readonly on: string
  readonly spot?: Spot
}

/** Who else is at the plan, from what each tells. */
export class Presence {
  readonly #own: string | undefined
  readonly #others = new Map<string, OtherHand>()

  constructor(own: string | undefined) {
    this.#own = own
  }

  /** Whether somebody is new. */
  hear(hand: string, word: unknown, nowMs: number): boolean {
    if (hand === this.#own || !isObject(word)) return false
    const { name, at, on = '', spot } = word
    if (typeof name !== 'string' || typeof at !== 'string' || typeof on !== 'string') return false
    const before = this.#others.get(hand)
    const stands = spotOf(spot, nowMs) ?? before?.spot
    this.#others.set(hand, {
      ...{ hand, name: undirected(name).slice(0, LONGEST_NAME) || namelessHand(hand), heardMs: nowMs },
      ...{ at: at.slice(0, LONGEST_KEY), on: on.slice(0, LONGEST_KEY) },
      ...(stands && { spot: stands }),
    })
    return before === undefined || before.heardMs <= nowMs - GONE_MS
  }

  leave(hand: string): void {
    this.#others.delete(hand)
  }

  now(nowMs: number): readonly OtherHand[] {
    return [...this.#others.values()].filter(({ heardMs }) => heardMs > nowMs - GONE_MS)
  }

  /** Where hands said last that they were, those that are gone too: an old place is better than none, where its age stands beside it. */
  spots(): readonly OtherHand[] {
    return [...this.#others.values()].filter(({ spot }) => spot)
  }
}

function spotOf(value: unknown, nowMs: number): Spot | undefined {
  if (!isObject(value)) return undefined
  const { position, accuracyM, atMs } = value
  const [lonDeg, latDeg] = Array.isArray(position) ? (position as unknown[]) : []
  const isPlace = typeof lonDeg === 'number' && typeof latDeg === 'number'
  if (!isPlace || !(Math.abs(lonDeg) <= 180 && Math.abs(latDeg) <= 90)) return undefined
  if (typeof accuracyM !== 'number' || !(accuracyM >= 0) || typeof atMs !== 'number') return undefined
  // A clock that goes ahead makes nobody younger than now.
  return { position: [lonDeg, latDeg], accuracyM, atMs: Math.min(atMs, nowMs) }
}
