import { isolated } from '../isolated'

/** What came in and was left out, in one sentence, however often it came and from however many hands. */
export class Refusals {
  #count = 0
  #first = ''
  readonly #from = new Set<string>()
  /** Whose nonsense the person knows of. */
  readonly #known = new Set<string>()

  /** @param from who signed it; empty where nobody did */
  add(sentences: readonly string[], from: string): void {
    if (sentences.length === 0 || this.#known.has(from)) return
    this.#first ||= sentences[0]!
    this.#count += sentences.length
    this.#from.add(from)
  }

  /** Empty where nothing was. */
  words(): string {
    if (this.#count === 0) return ''
    const named = [...this.#from].filter((each) => each !== '')
    const rest = named.length - MOST_NAMED
    const who = [...named.slice(0, MOST_NAMED).map(isolated), ...(rest > 0 ? [`${rest} more`] : [])]
    const from = who.length > 0 ? ` It came from ${who.join(', ')}.` : ''
    if (this.#count === 1) return `${this.#first}${from}`
    return `${this.#count} times something came in that can be no part of this plan, and was left out. The first time: ${this.#first}${from}`
  }

  /** The person has read of it, and is told no more of those who sent it. */
  putAway(): void {
    for (const each of this.#from) this.#known.add(each)
    this.#from.clear()
    this.#first = ''
    this.#count = 0
  }
}

const MOST_NAMED = 3
