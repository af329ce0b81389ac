import { computed, type Signal, signal } from '@preact/signals'
import { takeJournalOut, withJournal } from '../files/carried-journal'
import { carriedOver, mendedBack } from '../journal/carried-over'
import type { Edit } from '../journal/edit'
import type { Journal } from '../journal/journal'
import { forgetOld, stateOf, takeState } from '../journal/journal-state'
import { placeOf } from '../journal/keys'
import { shownValue } from '../journal/members'
import type { Plan } from '../plan/plan'
import { EditLog } from './edit-log'
import type { HandNames } from './hand-names'
import { Refusals } from './refusals'
import type { Received } from './room'
import type { LoggedStep, TakenEdit, TornProperty } from './sharing'

/** The parts of the store that a journal under the plan needs. */
export interface TableStore {
  readonly settled: { subscribe(listener: (plan: Plan) => void): () => void; peek(): Plan }
  readonly dragging: { subscribe(listener: (is: boolean) => void): () => void; peek(): boolean }
  readonly absorb: (present: Plan, change: (plan: Plan) => Plan) => void
  readonly mendBack: (how: ((back: Plan, from: Plan) => Plan) | null) => void
  readonly edit: (change: (plan: Plan) => Plan) => void
  readonly notice: { value: string }
}

/**
 * Edits that come in are gathered for so long, ms: no screen shows more pictures than that, and a report takes its time. The page has as
 * much time for its own hand as for others.
 */
const GATHER_MS = { least: 50, most: 400 }
const MOST_SAID = 50
const STAYS =
  'Others have changed the same after you: theirs stays, and there is nothing of yours to take back.'

/** Keeps the plan on the table and a journal alike, whoever carries what is written to others and brings what they wrote. */
export class TableJournal {
  readonly journal: Journal
  readonly torn = signal<readonly TornProperty[]>([])
  readonly said = signal<readonly string[]>([])
  readonly taken = signal<readonly TakenEdit[]>([])
  readonly #shownLog: Signal<EditLog>
  readonly log = computed(() => this.#shownLog.value.steps.value)
  /** The thing that this hand changed last, as a key. */
  lastKey = ''
  readonly #store: TableStore
  /** Null for whoever only reads. */
  readonly #hand: string | null
  readonly #names: HandNames
  readonly #onWritten: (edits: readonly Edit[]) => void
  readonly #stops: (() => void)[] = []
  readonly #told = new Set<string>()
  readonly #refusals = new Refusals()
  #synced: Plan
  #isGoingBack = false
  #changed = new Set<string>()
  #others: Edit[] = []
  #timer: ReturnType<typeof setTimeout> | undefined
  #waitMs = GATHER_MS.least

  constructor(
    store: TableStore,
    journal: Journal,
    hand: string | null,
    names: HandNames,
    onWritten: (edits: readonly Edit[]) => void,
  ) {
    forgetOld(journal, Date.now())
    this.journal = journal
    this.#store = store
    this.#hand = hand
    this.#names = names
    this.#onWritten = onWritten
    this.#shownLog = signal(new EditLog(journal, this.#nameOf))
    this.#synced = journal.mended().plan
  }

  readonly #nameOf = (hand: string): string => (hand === this.#hand ? 'You' : this.#names.of(hand))

  /** @param base the plan that was opened: what the person has changed since is an edit, on top of what others have done */
  start(base: Plan): void {
    const now = this.#store.settled.peek()
    if (now !== base) this.#write(base, now)
    this.#synced = this.journal.mended().plan
    if (this.#synced !== now) this.#store.absorb(this.#synced, (past) => past)
    this.#store.mendBack((back, from) => {
      this.#isGoingBack = true
      return mendedBack(back, from, this.journal).plan
    })
    this.#stops.push(
      this.#store.settled.subscribe((plan) => this.#onSettled(plan)),
      this.#store.dragging.subscribe((is) => {
        if (!is && this.#changed.size > 0) this.#absorbSoon()
      }),
    )
    this.#showTorn()
  }

  #onSettled(plan: Plan): void {
    if (plan === this.#synced) return
    const isDone = this.#write(this.#synced, plan)
    if (this.#isGoingBack && !isDone && this.#hand !== null) this.#store.notice.value = STAYS
    this.#isGoingBack = false
    if (this.#hand !== null) this.#synced = plan
  }

  /** Whether there was anything to write. */
  #write(from: Plan, next: Plan): boolean {
    if (this.#hand === null) return false
    const edits = this.journal.write(this.#hand, from, next, Date.now())
    this.#written(edits)
    return edits.length > 0
  }

  #written(edits: readonly Edit[]): void {
    const [first] = edits
    if (!first) return
    this.lastKey = first.key
    this.#shownLog.peek().add(edits)
    this.#showTorn()
    this.#onWritten(edits)
  }

  /** Takes in what others wrote. */
  take({ changed, added, refused, hand }: Received): void {
    if (refused.length > 0) this.#tellRefused(refused, hand === undefined ? '' : this.#names.of(hand))
    this.#shownLog.peek().add(added)
    const others = added.filter(({ hand }) => hand !== this.#hand)
    this.#others.push(...others)
    for (const { key } of others) this.#changed.add(key)
    if (added.length === 0) for (const key of changed) this.#changed.add(key)
    if (this.#changed.size > 0) this.#absorbSoon()
  }

  #absorbSoon(): void {
    this.#timer ??= setTimeout(() => {
      this.#timer = undefined
      if (!this.#store.dragging.peek()) this.#absorb()
    }, this.#waitMs)
  }

  /** What others did comes onto the table, and into all that one can go back to. */
  #absorb(): void {
    const [changed, others] = [this.#changed, this.#others]
    if (changed.size === 0) return
    const begun = performance.now()
    this.#changed = new Set()
    this.#others = []
    const { plan, mended } = this.journal.mended()
    this.tell(mended.filter((each) => !this.#told.has(each)))
    for (const each of mended) this.#told.add(each)
    this.#synced = plan
    this.taken.value = others.map(({ hand, key }) => ({ who: this.#names.of(hand), key }))
    this.#store.absorb(plan, (past) => carriedOver(past, changed, this.journal))
    this.#showTorn()
    this.#waitMs = Math.min(GATHER_MS.most, Math.max(GATHER_MS.least, performance.now() - begun))
  }

  readonly tell = (sentences: readonly string[]): void => {
    const fresh = sentences.filter((each) => !this.said.peek().includes(each))
    if (fresh.length > 0) this.said.value = [...this.said.peek(), ...fresh].slice(-MOST_SAID)
  }

  #tellRefused(sentences: readonly string[], from: string): void {
    const before = this.#refusals.words()
    this.#refusals.add(sentences, from)
    const now = this.#refusals.words()
    if (now !== before) this.said.value = [...this.said.peek().filter((each) => each !== before), now]
  }

  readonly putAway = (): void => {
    this.#refusals.putAway()
    this.said.value = []
  }

  #showTorn(): void {
    const torn = this.journal.torn()
    if (torn.length === 0 && this.torn.peek().length === 0) return
    this.torn.value = torn.map(({ key, edits }) => ({
      key,
      choices: edits.map(({ hand, at, value }) => ({
        who: this.#nameOf(hand),
        atMs: at,
        value: shownValue(placeOf(key)!.member, value),
      })),
    }))
  }

  readonly choose = (key: string, value: unknown): void => {
    const { member } = placeOf(key)!
    const isChosen = (each: Edit) => JSON.stringify(shownValue(member, each.value)) === JSON.stringify(value)
    const edit = this.journal
      .torn()
      .find((each) => each.key === key)
      ?.edits.find(isChosen)
    if (!edit || this.#hand === null) return
    this.#written(this.journal.choose(this.#hand, key, edit.value, Date.now()))
    this.#changed.add(key)
    this.#absorb()
  }

  /** The plan with all that was taken out, as far as it is still known. */
  readonly everKnown = (): Plan => this.journal.things.ghosts()

  readonly goBackTo = (step: LoggedStep): void => {
    const plan = this.#shownLog.peek().planAt(step)
    this.#store.edit(() => plan)
  }

  /** Tells the log from an earlier beginning: what it now tells and that does not, is put in besides. */
  showLogFrom(begun: Journal, edits: readonly Edit[], most: number): void {
    const log = new EditLog(begun, this.#nameOf, most)
    log.add(edits)
    this.#shownLog.value = log
  }

  readonly filePlan = (): Plan => withJournal(this.journal.mended().plan, this.journal)

  /** Takes in what a file of this plan brings: whether it is one, and whether it brought anything. */
  takeFile(read: Plan): 'another' | 'nothing new' | 'taken' {
    const { journal } = takeJournalOut(read)
    if (journal?.id !== this.journal.id) return 'another'
    const changed = takeState(this.journal, stateOf(journal))
    if (typeof changed === 'string' || changed.size === 0) return 'nothing new'
    this.take({ changed, added: [], refused: [] })
    return 'taken'
  }

  /** What has come in and is not on the table yet comes there at once. */
  absorbNow(): void {
    if (!this.#store.dragging.peek()) this.#absorb()
  }

  leave(): void {
    for (const stop of this.#stops) stop()
    clearTimeout(this.#timer)
    this.#store.mendBack(null)
  }
}
