import { type DBSchema, openDB } from 'idb'
import { formatPlan } from '../files/format-plan'
import { parsePlan } from '../files/parse-plan'
import type { Plan } from '../plan/plan'
import type { Result } from '../problem'

/** A plan kept in this browser. */
interface Draft {
  readonly key: string
  /** How often this draft has been written. */
  readonly revision: number
  readonly title: string
  readonly savedAt: Date
  /** The draft that it grew out of, where that could not be dropped before the page went away. */
  readonly base?: DraftState
  /** The plan file's text: what an older or a newer program can read too. */
  readonly text: string
}

/** A draft as a list shows it. */
export type DraftEntry = Pick<Draft, 'key' | 'revision' | 'title' | 'savedAt'>

/** One state of one draft. */
export type DraftState = Pick<Draft, 'key' | 'revision'>

export interface LoadedDraft {
  readonly plan: Result<Plan>
  readonly state: DraftState
  readonly base: DraftState | undefined
}

interface DraftsSchema extends DBSchema {
  drafts: { key: string; value: Draft }
}

export type Drafts = Awaited<ReturnType<typeof openDrafts>>

/**
 * Opens the browser's store of drafts. Rejects where the browser keeps nothing, as some private windows do.
 *
 * Each window writes only to keys of its own making, so no window can overwrite what another has written.
 */
export async function openDrafts(name = 'fieldpair') {
  const db = await openDB<DraftsSchema>(name, 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('drafts', { keyPath: 'key' })
    },
  })

  return {
    /** Every draft, the newest first. */
    list: async (): Promise<readonly DraftEntry[]> => {
      const drafts = await db.getAll('drafts')
      return drafts
        .map(({ key, revision, title, savedAt }) => ({ key, revision, title, savedAt }))
        .sort((a, b) => b.savedAt.getTime() - a.savedAt.getTime())
    },

    /** One draft's plan, the state it was found in and what it grew out of; undefined where there is none of that key. */
    load: async (key: string): Promise<LoadedDraft | undefined> => {
      const draft = await db.get('drafts', key)
      if (!draft) return undefined
      return { plan: parsePlan(draft.text), state: { key, revision: draft.revision }, base: draft.base }
    },

    /** Writes one state of a draft: one request, committed at once, so that it holds even as the page goes away. */
    save: async (plan: Plan, state: DraftState, base: DraftState | null): Promise<void> => {
      const tx = db.transaction('drafts', 'readwrite')
      const kept = { ...state, title: plan.title, savedAt: new Date(), text: formatPlan(plan) }
      const put = tx.store.put(base ? { ...kept, base } : kept)
      tx.commit()
      await Promise.all([put, tx.done])
    },

    /** Drops the draft that another has grown out of. False where it has changed or gone meanwhile: then nothing is dropped. */
    supersede: async (base: DraftState): Promise<boolean> => {
      const tx = db.transaction('drafts', 'readwrite')
      const unchanged = (await tx.store.get(base.key))?.revision === base.revision
      if (unchanged) await tx.store.delete(base.key)
      await tx.done
      return unchanged
    },

    remove: (key: string): Promise<void> => db.delete('drafts', key),
    close: () => db.close(),
  }
}
