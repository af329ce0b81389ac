import { undirected } from '../isolated'
import { isObject } from '../schema/schema'

const LONGEST = 70
/** More hands than a plan ever has: what comes beyond is made up. */
const MOST = 20_000

/** What a hand is called that has told no name. */
export const namelessHand = (hand: string): string => `Somebody (${hand.slice(1, 5)})`

/** What the hands of a plan are called: told by each with what it writes, so that the log names them when they are gone. */
export class HandNames {
  readonly #names = new Map<string, string>()
  #list: readonly string[] | null = null

  /** Learns a name as it comes from outside: what is none is not taken. */
  learn(hand: string, name: unknown): void {
    if (typeof name !== 'string' || (this.#names.size >= MOST && !this.#names.has(hand))) return
    const short = undirected(name).slice(0, LONGEST)
    if (this.#names.get(hand) === short) return
    this.#names.set(hand, short)
    this.#list = null
  }

  /** Takes what another has learned; its own stays. */
  take(names: unknown): void {
    for (const [hand, name] of Object.entries(isObject(names) ? names : {}))
      if (!this.#names.has(hand)) this.learn(hand, name)
  }

  of(hand: string): string {
    return this.#names.get(hand) || namelessHand(hand)
  }

  /** Every name, the same list as long as nobody has a new one. */
  list(): readonly string[] {
    this.#list ??= [...this.#names.keys()].map((hand) => this.of(hand))
    return this.#list
  }

  all(): Readonly<Record<string, string>> {
    return Object.fromEntries([...this.#names].filter(([, name]) => name !== ''))
  }
}
