import { askBox } from './ask-box'
import type { BoxLine } from './box-line'
import type { KeptRooms } from './kept-rooms'

export interface Outgoing {
  readonly name: string
  readonly bytes: Uint8Array
}

/** After a try that failed the next one waits so long, ms. */
const AGAIN_MS = 1000

/** Envelopes of one's own on their way to the box, in their order: each is kept in this browser first, and sent until the box has it on its disk. */
export class Outbox {
  readonly #tag: string
  readonly #kept: KeptRooms | null
  readonly #onCount: (waiting: number) => void
  readonly #tell: (sentence: string) => void
  readonly #waiting: Outgoing[] = []
  /** Names that the box has, and that the kept state does not hold yet. */
  readonly #sent = new Set<string>()
  #line: BoxLine | null = null
  #isSending = false

  constructor(
    tag: string,
    kept: KeptRooms | null,
    onCount: (waiting: number) => void,
    tell: (sentence: string) => void,
  ) {
    this.#tag = tag
    this.#kept = kept
    this.#onCount = onCount
    this.#tell = tell
  }

  get size(): number {
    return this.#waiting.length
  }

  put(outgoing: Outgoing, isKept = false): void {
    this.#waiting.push(outgoing)
    this.#onCount(this.#waiting.length)
    const keeping = isKept
      ? undefined
      : this.#kept?.keepEnvelope({ ...outgoing, tag: this.#tag, isSent: false }).catch(() => undefined)
    void Promise.resolve(keeping).then(() => this.#send())
  }

  /** What the box has, for whoever keeps a state that holds it. */
  takeSent(): readonly string[] {
    const names = [...this.#sent]
    this.#sent.clear()
    return names
  }

  over(line: BoxLine | null): void {
    this.#line = line
    void this.#send()
  }

  async #send(): Promise<void> {
    if (this.#isSending) return
    this.#isSending = true
    while (this.#line && this.#waiting.length > 0) {
      // Several at a time, or a slow link would carry one for each time there and back.
      const some = this.#waiting.slice(0, 32)
      const line = this.#line
      const taken = await Promise.all(
        some.map(({ bytes }) =>
          line.publish(bytes).then(
            () => true,
            (error: unknown) => {
              void noRoomWords(error).then((why) => why && this.#tell(why))
              return false
            },
          ),
        ),
      )
      // What comes twice is taken once: so all that follows the first failure is sent again, in its order.
      const done = taken.includes(false) ? taken.indexOf(false) : taken.length
      for (const { name } of this.#waiting.splice(0, done)) this.#sent.add(name)
      this.#onCount(this.#waiting.length)
      if (done < some.length) await new Promise((again) => setTimeout(again, AGAIN_MS))
    }
    this.#isSending = false
  }
}

/** Why the box takes no more, in a sentence; empty where it is only not reached. */
export async function noRoomWords(error: unknown): Promise<string> {
  const { message = '' } = (error ?? {}) as { readonly message?: string }
  if (/maximum bytes exceeded/.test(message))
    return 'The box has no more room for this plan. What you change is kept here and waits. “Shut somebody out…” gives the plan a fresh start on the box: then invite all anew.'
  if (/message size exceeds|maximum payload/i.test(message))
    return 'A change is too large for the box (8 MB): it is kept here, and goes to others with a file.'
  // A box whose disk is full does not say so with the answer: it gives none.
  return (await askBox())?.isFull
    ? 'The box has no room on its disk. What you change is kept here and waits: free some room on the box.'
    : ''
}
