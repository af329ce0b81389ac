import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { formatPlan } from '../files/format-plan'
import { parsePlan } from '../files/parse-plan'
import type { Plan } from '../plan/plan'
import { readUnderWay, type UnderWay } from '../plan/under-way'
import type { Result } from '../problem'
import {
  type DraftEntry,
  type DraftRecord,
  type DraftState,
  readRecord,
  type VersionRecord,
} from './kept-records'

export interface LoadedDraft {
  readonly plan: Result<Plan>
  /** What was under way on it, as far as it can still be read. */
  readonly underWay: UnderWay | null
  readonly state: DraftState
  readonly doc: string
  readonly base: DraftState | undefined
}

export interface DraftsSchema extends DBSchema {
  drafts: { key: string; value: DraftRecord }
  versions: { key: string; value: VersionRecord; indexes: { doc: string } }
}

export type Drafts = Awaited<ReturnType<typeof openDrafts>>

/** One state of a plan, to be kept. */
interface Draft {
  readonly plan: Plan
  readonly underWay?: UnderWay | null
  readonly state: DraftState
  readonly doc: string
  readonly base?: DraftState | null
}

/** What a save found where it wrote. */
export interface Saved {
  /** The record written over; undefined where there was none: a draft's first, or another window has taken it over since. */
  readonly before: Pick<DraftEntry, 'revision' | 'title'> | undefined
}

/** How many removed plans are held to be brought back. Not so many days: a clock may be wrong. */
const MOST_REMOVED = 20

/** The store of drafts of a copy of the program from before each had a store of its own. */
const SHARED_NAME = 'fieldpair'

/**
 * Opens the browser's store of drafts. Rejects where the browser keeps nothing, as some private windows do.
 *
 * Each window writes only to keys of its own making, so no window can overwrite what another has written.
 *
 * @param onLost the store has gone from under this window: another program needs it in another form, or the browser has closed it
 */
export async function openDrafts(name: string, onLost: () => void = () => {}) {
  let isFresh = false
  const db = await openDB<DraftsSchema>(name, 1, {
    upgrade: (fresh) => {
      isFresh = true
      fresh.createObjectStore('drafts', { keyPath: 'key' })
      fresh.createObjectStore('versions', { keyPath: 'id' }).createIndex('doc', 'doc')
    },
    blocking: () => {
      db.close()
      onLost()
    },
    terminated: onLost,
  })
  if (isFresh) await takeInShared(db).catch(() => undefined)
  let highest = 0

  /** One record that the browser cannot read must not take the others with it. */
  const readAll = async () => {
    const keys = await db.getAllKeys('drafts')
    const values = await Promise.all(keys.map((key) => db.get('drafts', key).catch(() => ({ key }))))
    const found = values.flatMap((value) => readRecord(value) ?? [])
    highest = Math.max(highest, ...found.map(({ order }) => order))
    return found.sort((a, b) => b.order - a.order)
  }
  await readAll()
  const nextOrder = () => {
    highest = Math.max(highest + 1, Date.now())
    return highest
  }

  return {
    db,
    nextOrder,

    /** Every draft, the last written first, those removed and those beyond reading among them. */
    list: async (): Promise<readonly DraftEntry[]> =>
      (await readAll()).map(({ text: _text, doc: _doc, base: _base, underWay: _drawn, ...entry }) => entry),

    /** One draft's plan, the state it was found in and what it grew out of; undefined where there is none of that key. */
    load: async (key: string): Promise<LoadedDraft | undefined> => {
      const draft = readRecord(await db.get('drafts', key))
      if (!draft) return undefined
      const { revision, doc, base, text } = draft
      const plan = parsePlan(text)
      const underWay = plan.ok ? readUnderWay(draft.underWay, plan.value) : null
      return { plan, underWay, state: { key, revision }, doc, base }
    },

    /** The text of a draft, or all that its record holds where it has none: for a file, when no plan can be made of it. */
    textOf: async (key: string): Promise<string> => {
      const record: unknown = await db.get('drafts', key)
      return readRecord(record)?.text || JSON.stringify(record, null, 2)
    },

    /** Writes one state of a draft: asked for at once and committed at once, so that it holds even as the page goes away. */
    save: async ({ plan, underWay, state, doc, base }: Draft): Promise<Saved> => {
      const tx = db.transaction('drafts', 'readwrite', { durability: 'strict' })
      const record: DraftRecord = {
        ...state,
        doc,
        title: plan.title,
        savedAt: new Date(),
        order: nextOrder(),
        text: formatPlan(plan),
        ...(underWay && { underWay }),
        ...(base && { base }),
      }
      const before = tx.store.get(state.key)
      const put = tx.store.put(record)
      tx.commit()
      const [found] = await Promise.all([before, put, tx.done])
      return { before: readRecord(found) }
    },

    /** Changes a draft that this window has not on the table. One that has gone, or cannot be read, stays as it is. */
    change: async (key: string, edit: (plan: Plan) => Plan): Promise<void> => {
      const tx = db.transaction('drafts', 'readwrite', { durability: 'strict' })
      const record = await tx.store.get(key)
      const found = readRecord(record)
      const plan = found && parsePlan(found.text)
      if (record && found && plan?.ok) {
        const edited = edit(plan.value)
        const text = formatPlan(edited)
        const revision = found.revision + 1
        await tx.store.put({ ...record, revision, title: edited.title, savedAt: new Date(), text })
      }
      await tx.done
    },

    /** Drops the draft that another has grown out of. False where it has changed or gone meanwhile: then nothing is dropped. */
    supersede: async (base: DraftState): Promise<boolean> => {
      const tx = db.transaction('drafts', 'readwrite')
      const found = readRecord(await tx.store.get(base.key))
      const unchanged = found?.revision === base.revision
      if (unchanged) await tx.store.delete(base.key)
      await tx.done
      return unchanged
    },

    /** Whether another draft of the same plan is kept. */
    hasAnother: async (doc: string, key: string): Promise<boolean> =>
      (await readAll()).some((each) => each.doc === doc && each.key !== key && !each.isRemoved),

    /** Puts a draft among the removed, of which the last twenty can be brought back. */
    remove: async (key: string): Promise<void> => {
      const tx = db.transaction('drafts', 'readwrite')
      const record = await tx.store.get(key)
      if (record) await tx.store.put({ ...record, removedAt: new Date(), order: nextOrder() })
      await tx.done
      const removed = (await readAll()).filter(({ isRemoved }) => isRemoved)
      for (const { key: oldest } of removed.slice(MOST_REMOVED)) await db.delete('drafts', oldest)
    },

    bringBack: async (key: string): Promise<void> => {
      const tx = db.transaction('drafts', 'readwrite')
      const record = await tx.store.get(key)
      if (record) {
        const { removedAt: _, ...kept } = record
        await tx.store.put({ ...kept, order: nextOrder() })
      }
      await tx.done
    },

    erase: (key: string): Promise<void> => db.delete('drafts', key),
    close: () => db.close(),
  }
}

/** Copies the plans of the store that all copies of the program on a server once shared. It stays: another may want it too. */
async function takeInShared(db: IDBPDatabase<DraftsSchema>): Promise<void> {
  const names = (await indexedDB.databases()).map(({ name }) => name)
  if (!names.includes(SHARED_NAME) || db.name === SHARED_NAME) return
  const shared = await openDB<DraftsSchema>(SHARED_NAME)
  if (shared.objectStoreNames.contains('drafts'))
    for (const record of await shared.getAll('drafts')) await db.put('drafts', record)
  shared.close()
}
