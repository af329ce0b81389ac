import { isObject } from '../schema/schema'
import type { Room } from './room'
import { opened, sealed } from './sealed'
import type { OtherHand } from './sharing'

/** Whoever was not heard for so long is not there, ms. */
const GONE_MS = 20_000
/** So often each tells that it is there, ms. */
export const TELL_MS = 6000
const LONGEST_NAME = 60

/** Who else is at the plan, from what each tells now and then. */
export class Presence {
  readonly #room: Room
  readonly #others = new Map<string, OtherHand>()

  constructor(room: Room) {
    this.#room = room
  }

  word(name: string, at: string): Uint8Array | null {
    const { hand, keys } = this.#room
    return hand && sealed({ here: { name, at } }, hand, keys)
  }

  /** Whether somebody is new. */
  hear(bytes: Uint8Array, nowMs: number): boolean {
    const envelope = opened(bytes, this.#room.keys)
    if (typeof envelope === 'string' || !isObject(envelope.value) || !isObject(envelope.value.here))
      return false
    const { name, at } = envelope.value.here
    const { hand } = envelope
    if (hand === this.#room.hand?.name || typeof name !== 'string' || typeof at !== 'string') return false
    const isNew = !this.#others.has(hand)
    this.#others.set(hand, { hand, name: name.slice(0, LONGEST_NAME), at: at.slice(0, 200), heardMs: nowMs })
    return isNew
  }

  now(nowMs: number): readonly OtherHand[] {
    return [...this.#others.values()].filter(({ heardMs }) => heardMs > nowMs - GONE_MS)
  }

  /** What somebody is called, also when they are gone. */
  nameOf(hand: string): string {
    return this.#others.get(hand)?.name || `somebody (${hand.slice(1, 5)})`
  }
}
