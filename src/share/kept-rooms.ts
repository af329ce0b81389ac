import { type DBSchema, openDB } from 'idb'
import type { JournalState } from '../journal/journal-state'
import type { StreamPlace } from './box-line'

/** A shared plan as this browser keeps it: its keys, and a state of it from which the later envelopes lead on: its place is of the last one that is in it. */
export interface KeptRoom extends StreamPlace {
  readonly tag: string
  readonly keys: { readonly seal: Uint8Array; readonly writer: Uint8Array; readonly write: Uint8Array | null }
  readonly plan: string
  readonly state: JournalState
  readonly names?: Readonly<Record<string, string>>
  /** The person works on alone here, until they wish otherwise. */
  readonly isLeft?: boolean
}

/** An envelope of one's own that the kept state does not hold yet. */
export interface KeptEnvelope {
  readonly tag: string
  readonly name: string
  readonly bytes: Uint8Array
  /** Whether the box has it on its disk. */
  readonly isSent: boolean
}

interface Schema extends DBSchema {
  rooms: { key: string; value: KeptRoom }
  envelopes: { key: [string, string]; value: KeptEnvelope }
}

export type KeptRooms = Awaited<ReturnType<typeof openRooms>>

/** The browser's store of shared plans. Rejects where the browser keeps nothing. */
export async function openRooms(name: string) {
  const db = await openDB<Schema>(name, 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('rooms', { keyPath: 'tag' })
      fresh.createObjectStore('envelopes', { keyPath: ['tag', 'name'] })
    },
  })
  const ofTag = (tag: string) => IDBKeyRange.bound([tag, ''], [tag, '\uffff'])
  return {
    room: (tag: string): Promise<KeptRoom | undefined> => db.get('rooms', tag),
    /** All rooms of one journal: a plan that was given new keys has one for each. */
    ofJournal: async (id: string): Promise<KeptRoom[]> =>
      (await db.getAll('rooms')).filter(({ state }) => state.id === id),
    envelopes: (tag: string): Promise<KeptEnvelope[]> => db.getAll('envelopes', ofTag(tag)),
    /** On disk when it resolves, as far as a browser can tell. */
    keepEnvelope: async (envelope: KeptEnvelope): Promise<void> => {
      const tx = db.transaction('envelopes', 'readwrite', { durability: 'strict' })
      await Promise.all([tx.store.put(envelope), tx.done])
    },
    /** Keeps a state; the envelopes that are in it and on the box are no longer needed. */
    keepRoom: async (room: KeptRoom, done: readonly string[]): Promise<void> => {
      const tx = db.transaction(['rooms', 'envelopes'], 'readwrite', { durability: 'strict' })
      await Promise.all([
        tx.objectStore('rooms').put(room),
        ...done.map((name) => tx.objectStore('envelopes').delete([room.tag, name])),
        tx.done,
      ])
    },
    forget: async (tag: string): Promise<void> => {
      const tx = db.transaction(['rooms', 'envelopes'], 'readwrite')
      await Promise.all([
        tx.objectStore('rooms').delete(tag),
        tx.objectStore('envelopes').delete(ofTag(tag)),
        tx.done,
      ])
    },
    close: () => db.close(),
  }
}
