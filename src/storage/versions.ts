import { formatPlan } from '../files/format-plan'
import { parsePlan } from '../files/parse-plan'
import type { Plan } from '../plan/plan'
import type { Result } from '../problem'
import type { Drafts } from './drafts'
import type { VersionRecord } from './kept-records'
import { newKey } from './new-key'

export type VersionEntry = Pick<VersionRecord, 'id' | 'name' | 'keptAt'>

/** Keeps a plan as it is under a name. Rejects where there is no room. */
export async function keepVersion(
  { db, nextOrder }: Drafts,
  doc: string,
  name: string,
  plan: Plan,
): Promise<void> {
  const record = { id: newKey(), doc, name, keptAt: new Date(), order: nextOrder(), text: formatPlan(plan) }
  await db.add('versions', record)
}

/** The versions of one plan, the last kept first. What cannot be read is left out, and stays. */
export async function listVersions({ db }: Drafts, doc: string): Promise<readonly VersionEntry[]> {
  const records = await db.getAllFromIndex('versions', 'doc', doc)
  return records
    .filter(
      ({ name, keptAt, text }) =>
        typeof name === 'string' && keptAt instanceof Date && typeof text === 'string',
    )
    .sort((a, b) => b.order - a.order)
    .map(({ id, name, keptAt }) => ({ id, name, keptAt }))
}

export async function loadVersion({ db }: Drafts, id: string): Promise<Result<Plan> | undefined> {
  const record = await db.get('versions', id)
  return record && parsePlan(record.text)
}

export const removeVersion = ({ db }: Drafts, id: string): Promise<void> => db.delete('versions', id)
