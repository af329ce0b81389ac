import { formatPlan } from '../files/format-plan'
import { parsePlan } from '../files/parse-plan'
import type { Plan } from '../plan/plan'
import type { Result } from '../problem'
import { allKeptKeeper } from './all-kept-keeper'
import type { Drafts } from './drafts'
import type { Keeper, KeptStore } from './keeper'
import { NOTICES } from './keeping-notices'
import type { VersionEntry } from './kept-records'
import { newKey } from './new-key'

/** Keeps a plan as it is under a name. Rejects where there is no room. */
async function keepVersion({ db, nextOrder }: Drafts, doc: string, name: string, plan: Plan): Promise<void> {
  const record = { id: newKey(), doc, name, keptAt: new Date(), order: nextOrder(), text: formatPlan(plan) }
  await db.add('versions', record)
}

/** The versions of one plan, the last kept first. What cannot be read is left out, and stays. */
async function listVersions({ db }: Drafts, doc: string): Promise<readonly VersionEntry[]> {
  const records = await db.getAllFromIndex('versions', 'doc', doc)
  return records
    .filter(
      ({ name, keptAt, text }) =>
        typeof name === 'string' && keptAt instanceof Date && typeof text === 'string',
    )
    .sort((a, b) => b.order - a.order)
    .map(({ id, name, keptAt }) => ({ id, name, keptAt }))
}

async function loadVersion({ db }: Drafts, id: string): Promise<Result<Plan> | undefined> {
  const record = await db.get('versions', id)
  return record && parsePlan(record.text)
}

/** The versions of one plan as plans, the last kept first. What cannot be read is left out. */
async function versionPlans(drafts: Drafts, doc: string): Promise<readonly Plan[]> {
  const entries = await listVersions(drafts, doc)
  const results = await Promise.all(entries.map(({ id }) => loadVersion(drafts, id)))
  return results.flatMap((result) => (result?.ok ? [result.value] : []))
}

/** Removes a version, and gives the way to put it back. */
async function removeVersion({ db }: Drafts, id: string): Promise<() => Promise<void>> {
  const record = await db.get('versions', id)
  await db.delete('versions', id)
  return async () => {
    if (record) await db.put('versions', record)
  }
}

type VersionDeeds =
  | 'versions'
  | 'versionPlans'
  | 'keepVersion'
  | 'bringBackVersion'
  | 'removeVersion'
  | 'allKept'
  | 'takeIn'

/** The versions of the plan on the table, as the list of plans uses them; where nothing is kept there are none. */
export function versionKeeper(
  store: KeptStore,
  at: () => { readonly drafts: Drafts | null; readonly doc: string },
): Pick<Keeper, VersionDeeds> {
  return {
    ...allKeptKeeper(() => at().drafts),
    versions: async () => {
      const { drafts, doc } = at()
      return drafts ? await listVersions(drafts, doc) : []
    },
    versionPlans: async () => {
      const { drafts, doc } = at()
      return drafts ? await versionPlans(drafts, doc) : []
    },
    keepVersion: async (name) => {
      const { drafts, doc } = at()
      try {
        if (drafts) await keepVersion(drafts, doc, name, store.settled.peek())
      } catch {
        store.notice.value = NOTICES.noRoom
      }
    },
    bringBackVersion: async (version) => {
      const { drafts, doc } = at()
      if (!drafts) return
      const found = await loadVersion(drafts, version.id)
      if (!found?.ok) {
        store.notice.value = NOTICES.unreadable
        return
      }
      const before = store.settled.peek()
      await keepVersion(drafts, doc, `Before “${version.name}” was brought back`, before).catch(() => {})
      store.edit(() => found.value)
    },
    removeVersion: async (id) => {
      const { drafts } = at()
      return drafts ? await removeVersion(drafts, id) : async () => {}
    },
  }
}
