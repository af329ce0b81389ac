import { isObject } from '../schema/schema'

const LONGEST = 70
/** More hands than a plan ever has: what comes beyond is made up. */
const MOST = 20_000

/** What the hands of a plan are called: told by each with what it writes, so that the log names them when they are gone. */
export class HandNames {
  readonly #names = new Map<string, string>()

  /** Learns a name as it comes from outside: what is none is not taken. */
  learn(hand: string, name: unknown): void {
    if (typeof name !== 'string' || (this.#names.size >= MOST && !this.#names.has(hand))) return
    this.#names.set(hand, name.slice(0, LONGEST))
  }

  /** Takes what another has learned; its own stays. */
  take(names: unknown): void {
    for (const [hand, name] of Object.entries(isObject(names) ? names : {}))
      if (!this.#names.has(hand)) this.learn(hand, name)
  }

  of(hand: string): string {
    return this.#names.get(hand) || `somebody (${hand.slice(1, 5)})`
  }

  all(): Readonly<Record<string, string>> {
    return Object.fromEntries([...this.#names].filter(([, name]) => name !== ''))
  }
}
