import { type Signal, signal } from '@preact/signals'
import type { Edit } from '../journal/edit'
import type { Plan } from '../plan/plan'
import type { BoxLine, StreamPlace } from './box-line'
import type { Carrier } from './carrier'
import { Here } from './here'
import type { KeptRooms } from './kept-rooms'
import { layBeginning } from './lay-beginning'
import { OnTable } from './on-table'
import { Outbox } from './outbox'
import { invitation, tagOf } from './plan-keys'
import { movedWords, type Room, TOO_LARGE } from './room'
import { RoomKeeper } from './room-keeper'
import { sealed } from './sealed'
import type { SelectedThing } from './selected-key'
import type { BoxSide, Sharing, Standing } from './sharing'
import { wholeStream } from './stream-reads'
import { TableJournal, type TableStore } from './table-journal'

/** The parts of the store that a shared plan needs. */
export interface SharedStore extends TableStore {
  readonly opened: { subscribe(listener: (plan: Plan) => void): () => void; peek(): Plan }
  readonly selection: {
    subscribe(listener: (thing: SelectedThing) => void): () => void
    peek(): SelectedThing
  }
  readonly sharing: Signal<Sharing | null>
}

/** After so many envelopes the hand that wrote the last of them lays down a new beginning, so that nobody has to read them all. */
const NEW_BEGINNING = 2000

/** Keeps a shared journal and the box alike, the other windows of this browser and its store informed. */
export class SharedPlan extends OnTable implements Sharing, BoxSide {
  readonly box = this
  readonly standing = signal<Standing>('coming')
  readonly waiting = signal(0)
  readonly mayWrite: boolean
  readonly name: Signal<string>
  readonly #store: SharedStore
  readonly #room: Room
  readonly #keeper: RoomKeeper
  readonly #outbox: Outbox
  readonly #here: Here
  readonly #windows: BroadcastChannel | null
  #line: BoxLine | null = null
  #isTooLarge = false
  #isLeft = false
  /** Of the last envelope of the box that is in the journal. */
  #place: StreamPlace

  constructor(store: SharedStore, room: Room, kept: KeptRooms | null, name: Signal<string>, at: StreamPlace) {
    super(
      new TableJournal(store, room.journal, room.hand?.name ?? null, room.names, (edits) =>
        this.#send(edits),
      ),
    )
    this.#store = store
    this.#room = room
    this.#place = at
    this.name = name
    this.mayWrite = room.hand !== null
    name.subscribe((own) => room.hand && room.names.learn(room.hand.name, own))
    this.#here = new Here({
      ...{ own: room.hand?.name ?? null, name, selection: store.selection },
      lastKey: () => this.table.lastKey,
      say: (here) => {
        if (room.hand) this.#line?.tellHere(sealed({ here }, room.hand, room.keys))
      },
    })
    this.#outbox = new Outbox(
      tagOf(room.keys),
      kept,
      (waiting) => {
        this.waiting.value = waiting
      },
      (sentence) => this.table.tell([sentence]),
    )
    this.#keeper = new RoomKeeper(room, kept, this.#outbox, () => this.#place)
    this.#windows =
      typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(`fieldpair ${tagOf(room.keys)}`)
  }

  get others() {
    return this.#here.others
  }
  get spots() {
    return this.#here.spots
  }
  get tellSpot() {
    return this.#here.tellSpot
  }
  readonly names = () => this.#room.names.list()

  /**
   * @param base the plan that was opened: what the person has changed since is an edit, on top of what others have done
   * @param own envelopes of earlier visits that the box has not
   * @param isNew nobody has shared it before
   */
  async start(
    over: Carrier,
    base: Plan,
    own: readonly { readonly name: string; readonly bytes: Uint8Array }[],
    isNew: boolean,
  ): Promise<void> {
    for (const { name, bytes } of own) this.#outbox.put({ name, bytes }, true)
    this.table.start(base)
    let isBegun = !isNew
    // Another window may have to go on from here at once.
    if (isNew) void this.#keeper.keep()
    // Windows of one browser hear each other also where no box is reached.
    this.#windows?.addEventListener('message', ({ data }) => {
      if (data instanceof Uint8Array) this.#receive(data)
    })
    this.#line = await over.openLine(this.#room.keys, this.#place, {
      onEnvelope: (bytes, number, atMs) => {
        // Whoever is shut out still writes here: that is no part of the plan any more.
        if (this.standing.peek() === 'moved') return
        this.#place = { ...this.#place, upTo: number, atMs }
        const hand = this.#receive(bytes)
        const isDue = hand !== undefined && hand === this.#room.hand?.name && number % NEW_BEGINNING === 0
        if (isDue && this.#room.beginning(number)) void this.#begin()
      },
      onCaughtUp: async () => {
        if (['together', 'moved', 'too-large'].includes(this.standing.peek())) return
        if (!isBegun) await this.#begin()
        isBegun = true
        if (this.#isTooLarge) return
        this.standing.value = 'together'
        this.#outbox.over(this.#line)
        this.#here.tellSoon()
      },
      onApart: () => {
        this.#outbox.over(null)
        if (this.standing.peek() === 'coming' || this.standing.peek() === 'together')
          this.standing.value = 'apart'
      },
      onHere: (bytes) => {
        const said = this.#room.hereIn(bytes)
        if (said) this.#here.hear(said.hand, said.word)
      },
      onRefused: () => {
        if (this.standing.peek() !== 'moved') this.standing.value = 'refused'
      },
      onNearlyFull: (sentence) => this.table.tell([sentence]),
      onLost: () => {
        this.#place = { upTo: 0 }
        void this.#begin()
      },
      onStream: (stream) => {
        this.#place = { ...this.#place, stream }
      },
    })
  }

  /** Takes in an envelope; the hand that wrote it. */
  #receive(bytes: Uint8Array): string | undefined {
    const received = this.#room.receive(bytes)
    this.table.take(received)
    if (received.moved) {
      this.standing.value = 'moved'
      // The next visit hears it again.
      this.#place = { ...this.#place, upTo: this.#place.upTo - 1, atMs: undefined }
      this.#outbox.over(null)
      this.table.tell([movedWords(this.#room.names.of(received.hand!))])
    }
    this.#keeper.keepSoon()
    return received.hand
  }

  /** Lays down all that is there as a beginning for others. */
  async #begin(): Promise<void> {
    if (!this.mayWrite) return
    const bytes = this.#room.beginning(this.#place.upTo)
    if (!bytes) return this.#tellTooLarge()
    const wasTooLarge = this.#isTooLarge
    this.#isTooLarge = false
    const isLaid = await layBeginning(bytes, {
      line: () => this.#line,
      tell: (sentence) => this.table.tell([sentence]),
      isOver: () => this.#isLeft,
    })
    if (!isLaid || !wasTooLarge) return
    this.standing.value = 'together'
    this.#outbox.over(this.#line)
  }

  #tellTooLarge(): void {
    this.#isTooLarge = true
    this.standing.value = 'too-large'
    this.table.tell([TOO_LARGE])
  }

  #send(edits: readonly Edit[]): void {
    const [first] = edits
    const bytes = this.#isTooLarge ? undefined : this.#room.step(edits, this.name.peek())
    if (bytes) {
      this.#outbox.put({ name: `${first!.hand}:${first!.number}`, bytes })
      this.#windows?.postMessage(bytes)
    }
    // What builds on a step that never went out goes with all that is there, as soon as that is small enough.
    else void this.#begin()
    this.#here.tellSoon()
    this.#keeper.keepSoon()
  }

  readonly invitation = (mayWrite: boolean): string =>
    `${location.origin}${location.pathname}#${invitation(this.#room.keys, mayWrite)}`

  readonly readAll = async (): Promise<string> => {
    const all = await wholeStream(this.#room.keys, this.#room.names)
    if (typeof all === 'string') return all
    this.table.showLogFrom(all.begun, all.edits, Number.POSITIVE_INFINITY)
    return ''
  }

  readonly takeFile = (read: Plan): boolean => {
    const was = this.table.takeFile(read)
    if (was === 'another') return false
    if (was === 'taken' && this.mayWrite) void this.#begin()
    this.#store.notice.value = 'The file is of the plan on the table: what it brought is in it now.'
    return true
  }

  readonly changeKeys = () => this.onChangeKeys()
  onChangeKeys: () => Promise<void> = async () => undefined

  readonly stop = async () => {
    this.#keeper.isLeft = true
    this.leave()
    await this.onStopped()
  }
  onStopped: () => Promise<void> = async () => undefined

  /** Tells those who are left behind that the plan goes on elsewhere. */
  async tellMoved(): Promise<void> {
    await this.#line?.publish(this.#room.moved()).catch(() => undefined)
  }

  readonly leave = (): void => {
    this.#isLeft = true
    this.#here.leave()
    this.table.leave()
    void this.#keeper.keep()
    this.#windows?.close()
    this.#store.sharing.value = null
    void this.#line?.close()
  }
}
