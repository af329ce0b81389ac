import { formatPlan } from '../files/format-plan'
import { stateOf } from '../journal/journal-state'
import type { StreamPlace } from './box-line'
import type { KeptRooms } from './kept-rooms'
import type { Outbox } from './outbox'
import { tagOf } from './plan-keys'
import type { Room } from './room'

/** So long after the last change the state is kept, so that little has to be read again at the next visit. */
const KEEP_MS = 3000

/** Keeps the state of a shared plan in this browser, so that the next visit goes on from here. */
export class RoomKeeper {
  readonly #room: Room
  readonly #kept: KeptRooms | null
  readonly #outbox: Outbox
  readonly #place: () => StreamPlace
  /** The person works on alone from now on. */
  isLeft = false
  #keeping: ReturnType<typeof setTimeout> | undefined

  /** @param place of the last envelope of the box that is in it */
  constructor(room: Room, kept: KeptRooms | null, outbox: Outbox, place: () => StreamPlace) {
    this.#room = room
    this.#kept = kept
    this.#outbox = outbox
    this.#place = place
  }

  keepSoon(): void {
    this.#keeping ??= setTimeout(() => void this.keep(), KEEP_MS)
  }

  async keep(): Promise<void> {
    clearTimeout(this.#keeping)
    this.#keeping = undefined
    if (!this.#kept) return
    const { keys, journal, view, names } = this.#room
    const sent = this.#outbox.takeSent()
    const room = {
      tag: tagOf(keys),
      keys,
      plan: formatPlan(view.plan),
      state: stateOf(journal),
      names: names.all(),
      ...this.#place(),
      isLeft: this.isLeft,
    }
    await this.#kept.keepRoom(room, sent).catch(() => undefined)
  }
}
