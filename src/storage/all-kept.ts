import type { Everything, KeptText } from '../files/everything-file'
import { parsePlan } from '../files/parse-plan'
import type { Drafts } from './drafts'
import { readRecord } from './kept-records'
import { newKey } from './new-key'

/** What of a file came in, what was here already, and what could not be read. */
export interface TakenIn {
  readonly plans: number
  readonly versions: number
  readonly known: number
  readonly unreadable: number
}

const when = (date: unknown): string =>
  date instanceof Date && !Number.isNaN(date.getTime()) ? date.toISOString() : ''

/** Every plan and version that is kept; those that were removed are left out. */
export async function allKept({ db }: Drafts): Promise<Pick<Everything, 'plans' | 'versions'>> {
  const drafts = (await db.getAll('drafts')).flatMap((record) => readRecord(record) ?? [])
  const versions = await db.getAll('versions')
  return {
    plans: drafts
      .filter(({ isRemoved, fault }) => !isRemoved && fault === '')
      .sort((a, b) => b.order - a.order)
      .map(({ doc, title, savedAt, text }) => ({ doc, name: title, savedAt: when(savedAt), text })),
    versions: versions
      .filter(({ text }) => typeof text === 'string')
      .sort((a, b) => b.order - a.order)
      .map(({ doc, name, keptAt, text }) => ({ doc, name, savedAt: when(keptAt), text })),
  }
}

/**
 * Takes in plans and versions beside those that are kept. Nothing is written over: a text that is here already is not taken again, and a plan of
 * which another state is kept comes as one more.
 */
export async function takeIn(
  { db, nextOrder }: Drafts,
  { plans, versions }: Pick<Everything, 'plans' | 'versions'>,
): Promise<TakenIn> {
  const here = (await db.getAll('drafts')).flatMap((record) => readRecord(record) ?? [])
  const texts = new Set(here.filter(({ isRemoved }) => !isRemoved).map(({ text }) => text))
  const keptVersions = new Set(
    (await db.getAll('versions')).map(({ doc, name, text }) => `${doc} ${name} ${text}`),
  )
  const counts = { plans: 0, versions: 0, known: 0, unreadable: 0 }
  const isReadable = ({ text }: KeptText) => {
    const { ok } = parsePlan(text)
    if (!ok) counts.unreadable++
    return ok
  }
  // The last of a list was kept first: so the order stays.
  for (const each of [...plans].reverse()) {
    if (texts.has(each.text)) counts.known++
    else if (isReadable(each)) {
      const { doc, name, text } = each
      const savedAt = dateOf(each.savedAt)
      await db.put('drafts', {
        key: newKey(),
        revision: 1,
        doc: doc || newKey(),
        title: name,
        savedAt,
        order: nextOrder(),
        text,
      })
      texts.add(text)
      counts.plans++
    }
  }
  for (const each of [...versions].reverse()) {
    const { doc, name, text } = each
    if (keptVersions.has(`${doc} ${name} ${text}`)) counts.known++
    else if (isReadable(each)) {
      await db.put('versions', {
        id: newKey(),
        doc,
        name,
        keptAt: dateOf(each.savedAt),
        order: nextOrder(),
        text,
      })
      counts.versions++
    }
  }
  return counts
}

const dateOf = (text: string): Date => {
  const date = new Date(text)
  return Number.isNaN(date.getTime()) ? new Date() : date
}
