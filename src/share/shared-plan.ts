import { type Signal, signal } from '@preact/signals'
import { formatWithJournal, takeJournalOut } from '../files/carried-journal'
import { formatPlan } from '../files/format-plan'
import type { Edit } from '../journal/edit'
import { forgetOld, stateOf, takeState } from '../journal/journal-state'
import { placeOf } from '../journal/keys'
import { shownValue } from '../journal/members'
import type { Plan } from '../plan/plan'
import { type BoxLine, openLine } from './box-line'
import type { EditLog } from './edit-log'
import type { KeptRooms } from './kept-rooms'
import { Outbox } from './outbox'
import { invitation, tagOf } from './plan-keys'
import { Presence, TELL_MS } from './presence'
import type { Received, Room } from './room'
import type { LoggedStep, OtherHand, Sharing, TornProperty } from './sharing'

/** The parts of the store that a shared plan needs. */
export interface SharedStore {
  readonly settled: { subscribe(listener: (plan: Plan) => void): () => void; peek(): Plan }
  readonly opened: { subscribe(listener: (plan: Plan) => void): () => void; peek(): Plan }
  readonly dragging: { subscribe(listener: (is: boolean) => void): () => void; peek(): boolean }
  readonly absorb: (present: Plan, change: (plan: Plan) => Plan) => void
  readonly mendBack: (how: ((back: Plan, from: Plan) => Plan) | null) => void
  readonly edit: (change: (plan: Plan) => Plan) => void
  readonly sharing: Signal<Sharing | null>
  readonly notice: { value: string }
}

/** Edits that come in are gathered for so long: no screen shows more pictures than that, and a report takes its time. */
const GATHER_MS = 60
/** So long after the last change the state is kept, so that little has to be read again at the next visit. */
const KEEP_MS = 3000
/** After so many envelopes whoever writes lays down a new beginning, so that nobody has to read them all. */
const NEW_BEGINNING = 2000

/** Keeps the plan on the table and a shared journal alike, and the box, the other windows and this browser's store informed. */
export class SharedPlan implements Sharing {
  readonly standing = signal<'coming' | 'together' | 'apart' | 'refused'>('coming')
  readonly waiting = signal(0)
  readonly others = signal<readonly OtherHand[]>([])
  readonly torn = signal<readonly TornProperty[]>([])
  readonly said = signal<readonly string[]>([])
  readonly log = signal<readonly LoggedStep[]>([])
  readonly mayWrite: boolean
  readonly name: Signal<string>
  readonly #store: SharedStore
  readonly #room: Room
  readonly #kept: KeptRooms | null
  readonly #outbox: Outbox
  readonly #presence: Presence
  readonly #log: EditLog
  readonly #stops: (() => void)[] = []
  #line: BoxLine | null = null
  #upTo: number
  #synced: Plan
  #changed = new Set<string>()
  #lastKey = ''
  #timer: ReturnType<typeof setTimeout> | undefined
  #keeping: ReturnType<typeof setTimeout> | undefined

  constructor(
    store: SharedStore,
    room: Room,
    kept: KeptRooms | null,
    name: Signal<string>,
    upTo: number,
    beginning: EditLog,
  ) {
    this.#store = store
    this.#room = room
    this.#kept = kept
    this.#upTo = upTo
    this.name = name
    this.mayWrite = room.hand !== null
    this.#log = beginning
    this.#presence = new Presence(room)
    this.#outbox = new Outbox(tagOf(room.keys), kept, (waiting) => {
      this.waiting.value = waiting
    })
    forgetOld(room.journal, Date.now())
    this.#synced = room.view.plan
  }

  /**
   * @param base the plan that was opened: what the person has changed since is an edit, on top of what others have done
   * @param own envelopes of earlier visits that the box has not
   * @param isNew nobody has shared it before
   */
  async start(
    base: Plan,
    own: readonly { readonly name: string; readonly bytes: Uint8Array }[],
    isNew: boolean,
  ): Promise<void> {
    for (const { name, bytes } of own) this.#outbox.put({ name, bytes }, true)
    const now = this.#store.settled.peek()
    const written = now === base ? null : this.#room.write(base, now, Date.now())
    if (written) this.#send(written)
    this.#synced = this.#room.view.plan
    if (this.#synced !== now) this.#store.absorb(this.#synced, (past) => past)
    let isBegun = !isNew
    this.#store.mendBack(this.#room.mendedBack)
    this.#stops.push(
      this.#store.settled.subscribe((plan) => this.#onSettled(plan)),
      this.#store.dragging.subscribe((is) => {
        if (!is && this.#changed.size > 0) this.#absorbSoon()
      }),
    )
    const ticking = setInterval(() => this.#tellHere(), TELL_MS)
    this.#stops.push(() => clearInterval(ticking))
    this.#showTorn()
    this.#line = await openLine(this.#room.keys, this.#upTo + 1, {
      onEnvelope: (bytes, number) => {
        this.#upTo = number
        this.#take(this.#room.receive(bytes))
        if (this.mayWrite && number % NEW_BEGINNING === 0) void this.#begin()
      },
      onCaughtUp: async () => {
        if (this.standing.peek() === 'together') return
        if (!isBegun) await this.#begin()
        isBegun = true
        this.standing.value = 'together'
        this.#outbox.over(this.#line)
        this.#tellHere()
      },
      onApart: () => {
        this.#outbox.over(null)
        if (this.standing.peek() !== 'refused') this.standing.value = 'apart'
      },
      onHere: (bytes) => {
        if (this.#presence.hear(bytes, Date.now())) this.#tellHere()
        this.others.value = this.#presence.now(Date.now())
      },
      onRefused: () => {
        this.standing.value = 'refused'
      },
      onLost: () => {
        this.#upTo = 0
        void this.#begin()
      },
    })
  }

  /** All that is there as a beginning for others; again and again, until the box has it. */
  async #begin(): Promise<void> {
    const bytes = this.#room.beginning(this.#upTo)
    for (let left = 20; left > 0; left--) {
      try {
        return await this.#line!.publish(bytes, `begin:${this.#upTo}:${Date.now()}`, true)
      } catch {
        await new Promise((again) => setTimeout(again, 1000))
      }
    }
  }

  #onSettled(plan: Plan): void {
    if (plan === this.#synced) return
    if (!this.mayWrite) return
    const written = this.#room.write(this.#synced, plan, Date.now())
    this.#synced = plan
    if (written) this.#send(written)
  }

  #send({ edits, bytes }: { readonly edits: readonly Edit[]; readonly bytes: Uint8Array }): void {
    const [first] = edits
    this.#lastKey = first!.key
    this.#log.add(edits)
    this.#outbox.put({ name: `${first!.hand}:${first!.number}`, bytes })
    this.#afterChange()
  }

  #take({ changed, added, refused }: Received): void {
    if (refused.length > 0) this.#say(refused)
    this.#log.add(added)
    const others = added.filter(({ hand }) => hand !== this.#room.hand?.name)
    for (const { key } of others) this.#changed.add(key)
    if (added.length === 0) for (const key of changed) this.#changed.add(key)
    if (this.#changed.size > 0) this.#absorbSoon()
  }

  #absorbSoon(): void {
    this.#timer ??= setTimeout(() => {
      this.#timer = undefined
      if (!this.#store.dragging.peek()) this.#absorb()
    }, GATHER_MS)
  }

  /** What others did comes onto the table, and into all that one can go back to. */
  #absorb(): void {
    const changed = this.#changed
    if (changed.size === 0) return
    this.#changed = new Set()
    const { plan, mended } = this.#room.view
    this.#say(mended.filter((each) => !this.#told.has(each)))
    for (const each of mended) this.#told.add(each)
    this.#synced = plan
    this.#store.absorb(plan, this.#room.carried(changed))
    this.#afterChange()
  }
  readonly #told = new Set<string>()

  #say(sentences: readonly string[]): void {
    const fresh = sentences.filter((each) => !this.said.peek().includes(each))
    if (fresh.length > 0) this.said.value = [...this.said.peek(), ...fresh].slice(-50)
  }

  #afterChange(): void {
    this.#showTorn()
    this.log.value = this.#log.steps((hand) => this.#nameOf(hand))
    this.#keeping ??= setTimeout(() => void this.#keep(), KEEP_MS)
  }

  #nameOf(hand: string): string {
    return hand === this.#room.hand?.name ? 'You' : this.#presence.nameOf(hand)
  }

  #showTorn(): void {
    this.torn.value = this.#room.journal.torn().map(({ key, edits }) => ({
      key,
      choices: edits.map(({ hand, at, value }) => ({
        who: this.#nameOf(hand),
        atMs: at,
        value: shownValue(placeOf(key)!.member, value),
      })),
    }))
  }

  /** Keeps the state in this browser, so that the next visit goes on from here. */
  async #keep(): Promise<void> {
    this.#keeping = undefined
    if (!this.#kept) return
    const { keys, journal, view } = this.#room
    const sent = this.#outbox.takeSent()
    const room = {
      tag: tagOf(keys),
      keys,
      plan: formatPlan(view.plan),
      state: stateOf(journal),
      upTo: this.#upTo,
    }
    await this.#kept.keepRoom(room, sent).catch(() => undefined)
  }

  #tellHere(): void {
    const word = this.#presence.word(this.name.peek(), this.#lastKey)
    if (word) this.#line?.tellHere(word)
    this.others.value = this.#presence.now(Date.now())
  }

  readonly invitation = (mayWrite: boolean): string =>
    `${location.origin}${location.pathname}#${invitation(this.#room.keys, mayWrite)}`

  readonly choose = (key: string, value: unknown): void => {
    const { member } = placeOf(key)!
    const chosen = this.#room.journal.torn().find((each) => each.key === key)?.edits
    const edit = chosen?.find(
      (each) => JSON.stringify(shownValue(member, each.value)) === JSON.stringify(value),
    )
    const written = edit && this.#room.choose(key, edit.value, Date.now())
    if (!written) return
    this.#changed.add(key)
    this.#send(written)
    this.#absorb()
  }

  readonly goBackTo = (step: LoggedStep): void => {
    const plan = this.#log.planAt(step)
    this.#store.edit(() => plan)
  }

  readonly fileText = (): string => formatWithJournal(this.#room.view.plan, this.#room.journal)

  readonly takeFile = (read: Plan): boolean => {
    const { journal } = takeJournalOut(read)
    if (journal?.id !== this.#room.journal.id) return false
    const changed = takeState(this.#room.journal, stateOf(journal))
    if (typeof changed !== 'string' && changed.size > 0) {
      for (const key of changed) this.#changed.add(key)
      this.#absorb()
      if (this.mayWrite) void this.#begin()
    }
    this.#store.notice.value = 'The file is of the plan on the table: what it brought is in it now.'
    return true
  }

  readonly putAway = (): void => {
    this.said.value = []
  }

  readonly changeKeys: () => Promise<void> = async () => {
    await this.onChangeKeys()
  }
  onChangeKeys: () => Promise<void> = async () => undefined

  readonly leave = (): void => {
    for (const stop of this.#stops) stop()
    clearTimeout(this.#timer)
    clearTimeout(this.#keeping)
    void this.#keep()
    this.#store.mendBack(null)
    this.#store.sharing.value = null
    void this.#line?.close()
  }
}
