import { formatPlan } from '../files/format-plan'
import { parsePlan } from '../files/parse-plan'
import { carriedOver, mendedBack } from '../journal/carried-over'
import type { Edit } from '../journal/edit'
import type { Journal, MendedPlan } from '../journal/journal'
import { type JournalState, journalOf, stateOf, takeState } from '../journal/journal-state'
import type { Plan } from '../plan/plan'
import { isObject } from '../schema/schema'
import { packedStep, stepOfPacked } from './packed-step'
import type { PlanKeys } from './plan-keys'
import { opened, type SigningHand, sealed } from './sealed'

/** What a plan began with, or a later state of it, for whoever comes anew. */
export interface Beginning {
  readonly plan: string
  readonly state: JournalState
  /** So far the stream is in it. */
  readonly upTo: number
}

/** What an envelope did. */
export interface Received {
  /** Registers that say something else now. */
  readonly changed: ReadonlySet<string>
  readonly added: readonly Edit[]
  /** Sentences. */
  readonly refused: readonly string[]
}

const NOTHING: Received = { changed: new Set(), added: [], refused: [] }

/** The journal of a shared plan with the keys to it: envelopes come in and go out, whoever carries them. */
export class Room {
  readonly keys: PlanKeys
  readonly journal: Journal
  /** Null for whoever only reads. */
  readonly hand: SigningHand | null

  constructor(keys: PlanKeys, journal: Journal, hand: SigningHand | null) {
    this.keys = keys
    this.journal = journal
    this.hand = hand
  }

  get view(): MendedPlan {
    return this.journal.mended()
  }

  /** An envelope with all that leads from one plan to the next; null where nothing does. */
  write(
    from: Plan,
    next: Plan,
    clockMs: number,
  ): { readonly edits: readonly Edit[]; readonly bytes: Uint8Array } | null {
    if (!this.hand) return null
    const edits = this.journal.write(this.hand.name, from, next, clockMs)
    return edits.length > 0 ? { edits, bytes: this.#sealed({ step: packedStep(edits) }) } : null
  }

  choose(
    key: string,
    value: unknown,
    clockMs: number,
  ): { readonly edits: readonly Edit[]; readonly bytes: Uint8Array } | null {
    if (!this.hand) return null
    const edits = this.journal.choose(this.hand.name, key, value, clockMs)
    return { edits, bytes: this.#sealed({ step: packedStep(edits) }) }
  }

  beginning(upTo: number): Uint8Array {
    const begin: Beginning = { plan: formatPlan(this.view.plan), state: stateOf(this.journal), upTo }
    return this.#sealed({ begin })
  }

  #sealed(value: object): Uint8Array {
    if (!this.hand) throw new Error('who only reads writes nothing')
    return sealed(value, this.hand, this.keys)
  }

  /** Takes in an envelope. Nothing that is in it can stop the plan: what cannot be is refused with a sentence. */
  receive(bytes: Uint8Array): Received {
    const envelope = opened(bytes, this.keys)
    if (typeof envelope === 'string') return { ...NOTHING, refused: [envelope] }
    const { hand, value } = envelope
    const { step, begin } = (isObject(value) ? value : {}) as {
      readonly step?: unknown
      readonly begin?: unknown
    }
    if (begin !== undefined) return this.#takeBeginning(begin)
    const edits = stepOfPacked(hand, step)
    return typeof edits === 'string' ? { ...NOTHING, refused: [edits] } : this.journal.take(edits)
  }

  /** What a later beginning tells of hands that are known as well as it knows them is no news; what it adds is taken in. */
  #takeBeginning(value: unknown): Received {
    const state = isObject(value) ? (value.state as JournalState | undefined) : undefined
    const seen = isObject(state?.seen) ? state.seen : {}
    const isNews = Object.entries(seen).some(([hand, number]) => number > (this.journal.seen.get(hand) ?? 0))
    if (!isNews || !state) return NOTHING
    const changed = takeState(this.journal, state)
    return typeof changed === 'string' ? { ...NOTHING, refused: [changed] } : { ...NOTHING, changed }
  }

  /** A state of one's own past as others have left it. */
  readonly carried = (changed: ReadonlySet<string>) => (past: Plan) =>
    carriedOver(past, changed, this.journal)
  readonly mendedBack = (back: Plan, from: Plan): Plan => mendedBack(back, from, this.journal).plan
}

/** The journal that an envelope begins with, and how far the stream is in it; undefined where it holds none. */
export function beginningIn(
  bytes: Uint8Array,
  keys: PlanKeys,
): { readonly journal: Journal; readonly upTo: number } | undefined {
  const envelope = opened(bytes, keys)
  const begin = typeof envelope !== 'string' && isObject(envelope.value) ? envelope.value.begin : undefined
  return isObject(begin) ? beginningOf(begin) : undefined
}

export function beginningOf({ plan, state, upTo }: Readonly<Record<string, unknown>>) {
  const read = typeof plan === 'string' ? parsePlan(plan) : undefined
  const journal = read?.ok ? journalOf(read.value, state) : undefined
  return journal && typeof journal !== 'string'
    ? { journal, upTo: Number.isSafeInteger(upTo) ? (upTo as number) : 0 }
    : undefined
}
