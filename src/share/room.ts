import { formatPlan } from '../files/format-plan'
import { isolated } from '../isolated'
import type { Edit } from '../journal/edit'
import type { Journal, MendedPlan } from '../journal/journal'
import { type JournalState, stateOf, takeState } from '../journal/journal-state'
import { isObject } from '../schema/schema'
import { HandNames } from './hand-names'
import { journalIn } from './journal-in'
import { packedStep, stepOfPacked } from './packed-step'
import type { PlanKeys } from './plan-keys'
import { opened, type SigningHand, sealed, sealedIfSmall } from './sealed'

/** What a plan began with, or a later state of it, for whoever comes anew. */
export interface Beginning {
  readonly plan: string
  readonly state: JournalState
  /** So far the stream is in it. */
  readonly upTo: number
  /** What the hands in it are called. */
  readonly names: Readonly<Record<string, string>>
}

/** What an envelope did. */
export interface Received {
  /** Registers that say something else now. */
  readonly changed: ReadonlySet<string>
  readonly added: readonly Edit[]
  /** Sentences. */
  readonly refused: readonly string[]
  /** Who signed it. */
  readonly hand?: string
  /** The plan goes on under other keys. */
  readonly moved?: boolean
}

/** Where {@link Room.step} or {@link Room.beginning} gives nothing. */
export const TOO_LARGE =
  'The plan is too large for the box now: it takes 8 MB at once, and 32 MB unpacked. What you change stays on this screen; take what made it so large out again, or hand the plan on with “Save as a file…” under Plans.'

export const movedWords = (who: string): string =>
  `${isolated(who)} has given the plan new keys. What you change from now on stays on this screen. If you are to stay, ask for a new invitation and open it in this browser: what you changed comes along. If not, the plan as it stands here is yours to keep.`

const NOTHING: Received = { changed: new Set(), added: [], refused: [] }

/** The journal of a shared plan with the keys to it: envelopes come in and go out, whoever carries them. */
export class Room {
  readonly keys: PlanKeys
  readonly journal: Journal
  /** Null for whoever only reads. */
  readonly hand: SigningHand | null
  readonly names = new HandNames()
  /** What others have last read as the name of this hand. */
  #toldName = ''

  constructor(keys: PlanKeys, journal: Journal, hand: SigningHand | null) {
    this.keys = keys
    this.journal = journal
    this.hand = hand
  }

  get view(): MendedPlan {
    return this.journal.mended()
  }

  /** An envelope with the edits of a step; the name of this hand goes along where others do not know it yet. Undefined where no box takes it for its size. */
  step(edits: readonly Edit[], name = ''): Uint8Array | undefined {
    const by = name === this.#toldName ? {} : { by: name }
    this.#toldName = name
    if (this.hand) this.names.learn(this.hand.name, name)
    return sealedIfSmall({ step: packedStep(edits), ...by }, this.#writer, this.keys)
  }

  /** An envelope that says: the plan goes on under other keys. */
  moved(): Uint8Array {
    return sealed({ moved: true }, this.#writer, this.keys)
  }

  /** All that is there as an envelope; undefined where no box takes it for its size. */
  beginning(upTo: number): Uint8Array | undefined {
    const at = { upTo, names: this.names.all() }
    const begin: Beginning = { plan: formatPlan(this.view.plan), state: stateOf(this.journal), ...at }
    return sealedIfSmall({ begin }, this.#writer, this.keys)
  }

  get #writer(): SigningHand {
    if (!this.hand) throw new Error('who only reads writes nothing')
    return this.hand
  }

  /** Takes in an envelope. Nothing that is in it can stop the plan: what cannot be is refused with a sentence. */
  receive(bytes: Uint8Array): Received {
    const envelope = opened(bytes, this.keys)
    if (typeof envelope === 'string') return { ...NOTHING, refused: [envelope] }
    const { hand, value } = envelope
    const { step, begin, by, moved } = (isObject(value) ? value : {}) as Readonly<Record<string, unknown>>
    if (moved === true) return { ...NOTHING, hand, moved }
    if (begin !== undefined) return { ...this.#takeBeginning(begin), hand }
    this.names.learn(hand, by)
    const edits = stepOfPacked(hand, step)
    return {
      ...(typeof edits === 'string' ? { ...NOTHING, refused: [edits] } : this.journal.take(edits)),
      hand,
    }
  }

  /** What a hand tells of where it is; undefined where the envelope holds none. */
  hereIn(bytes: Uint8Array) {
    const envelope = opened(bytes, this.keys)
    const word = typeof envelope === 'object' && isObject(envelope.value) ? envelope.value.here : undefined
    if (typeof envelope === 'string' || !isObject(word)) return undefined
    this.names.learn(envelope.hand, word.name)
    return { hand: envelope.hand, word }
  }

  /** What a later beginning tells of hands that are known as well as it knows them is no news; what it adds is taken in. */
  #takeBeginning(value: unknown): Received {
    const state = isObject(value) ? (value.state as JournalState | undefined) : undefined
    this.names.take(isObject(value) ? value.names : undefined)
    const seen = isObject(state?.seen) ? state.seen : {}
    const isNews = Object.entries(seen).some(([hand, number]) => number > (this.journal.seen.get(hand) ?? 0))
    if (!isNews || !state) return NOTHING
    const changed = takeState(this.journal, state)
    return typeof changed === 'string' ? { ...NOTHING, refused: [changed] } : { ...NOTHING, changed }
  }
}

/** The journal that an envelope begins with, and how far the stream is in it; undefined where it holds none. */
export function beginningIn(bytes: Uint8Array, keys: PlanKeys): ReturnType<typeof beginningOf> {
  const envelope = opened(bytes, keys)
  const begin = typeof envelope !== 'string' && isObject(envelope.value) ? envelope.value.begin : undefined
  return isObject(begin) ? beginningOf(begin) : undefined
}

export function beginningOf(kept: Readonly<Record<string, unknown>>) {
  const journal = journalIn(kept)
  const { upTo, names, stream, atMs } = kept
  return journal
    ? {
        ...{ journal, names },
        upTo: Number.isSafeInteger(upTo) ? (upTo as number) : 0,
        stream: typeof stream === 'string' ? stream : undefined,
        atMs: typeof atMs === 'number' ? atMs : undefined,
      }
    : undefined
}
