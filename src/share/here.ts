import { type Signal, signal } from '@preact/signals'
import { type HereWord, Presence } from './presence'
import { type SelectedThing, whatIsSelected } from './selected-key'
import type { OtherHand, Spot } from './sharing'

/** So often each tells that it is there, ms. */
const TELL_MS = 6000
/** A selection that wanders is told no more often than this, ms. */
const TELL_SOON_MS = 300

interface Ways {
  /** Null for whoever only reads, and tells nothing. */
  readonly own: string | null
  readonly name: Signal<string>
  readonly selection: {
    subscribe(listener: (thing: SelectedThing) => void): () => void
    peek(): SelectedThing
  }
  /** The thing that was changed last, as a key. */
  readonly lastKey: () => string
  readonly say: (word: HereWord) => void
}

/** Tells the others what this screen is at, and shows what they tell. */
export class Here {
  readonly others = signal<readonly OtherHand[]>([])
  readonly spots = signal<readonly OtherHand[]>([])
  readonly #ways: Ways
  readonly #presence: Presence
  readonly #ticking: ReturnType<typeof setInterval>
  readonly #stopFollowing: () => void
  #telling: ReturnType<typeof setTimeout> | undefined
  #spot: Spot | null = null

  constructor(ways: Ways) {
    this.#ways = ways
    this.#presence = new Presence(ways.own ?? undefined)
    this.#ticking = setInterval(() => this.#tell(), TELL_MS)
    this.#stopFollowing = ways.selection.subscribe(() => this.tellSoon())
  }

  tellSoon(): void {
    this.#telling ??= setTimeout(() => this.#tell(), TELL_SOON_MS)
  }

  #tell(): void {
    clearTimeout(this.#telling)
    this.#telling = undefined
    const { own, name, selection, lastKey, say } = this.#ways
    const on = whatIsSelected(selection.peek())
    if (own !== null) say({ name: name.peek(), at: lastKey(), on, ...(this.#spot && { spot: this.#spot }) })
    this.#show()
  }

  /** Whether somebody is new: they know nothing of this screen yet. */
  hear(hand: string, word: unknown): void {
    if (this.#presence.hear(hand, word, Date.now())) this.tellSoon()
    this.#show()
  }

  left(hand: string): void {
    this.#presence.leave(hand)
    this.#show()
  }

  #show(): void {
    const [others, spots] = [this.#presence.now(Date.now()), this.#presence.spots()]
    // Nobody and nobody are the same: what is drawn of it need not be drawn anew.
    if (others.length + this.others.peek().length > 0) this.others.value = others
    if (spots.length + this.spots.peek().length > 0) this.spots.value = spots
  }

  readonly tellSpot = (spot: Spot | null): void => {
    this.#spot = spot
    this.tellSoon()
  }

  leave(): void {
    clearInterval(this.#ticking)
    clearTimeout(this.#telling)
    this.#stopFollowing()
  }
}
