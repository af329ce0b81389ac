import { formatPlan } from '../files/format-plan'
import { parsePlan } from '../files/parse-plan'
import { EMPTY_PLAN, type Plan } from '../plan/plan'
import { ownName } from './own-name'

type CatalogEntries = Plan['catalog']

interface Signal<T> {
  value: T
  peek(): T
  subscribe(listener: (value: T) => void): () => void
}

export interface EntriesStore {
  /** A person's own entries of the catalog, for whichever plan is open. */
  readonly keptEntries: Signal<CatalogEntries>
  /** Why they are not kept beyond this page, or could not be read, in a sentence; empty where all is well. */
  readonly keptEntriesFailure: Signal<string>
}

const key = () => ownName('fieldpair-own-entries')
/** What could not be read is put aside under this, so that the next entry that is kept does not write over it. */
const asideKey = () => `${key()} unread`

/** Brings back the entries that a person keeps for every plan, keeps every change of them, and follows other windows. */
export function keepEntries(store: EntriesStore): () => void {
  let written = ''
  const bring = () => {
    const text = read(store)
    if (text === written) return
    written = text
    const entries = entriesOf(text)
    if (entries) store.keptEntries.value = entries
    else {
      write(asideKey(), text, store)
      store.keptEntriesFailure.value =
        'The wires, sets and supplies that were kept for other plans cannot be read here. They are put aside, and nothing is written over them.'
    }
  }
  bring()
  const stop = store.keptEntries.subscribe((entries) => {
    const text = textOfEntries(entries)
    if (text === textOfEntries(entriesOf(written) ?? EMPTY_PLAN.catalog)) return
    if (write(key(), text, store)) {
      written = text
      store.keptEntriesFailure.value = ''
    }
  })
  const onStorage = (event: StorageEvent) => {
    if (event.key === key()) bring()
  }
  addEventListener('storage', onStorage)
  return () => {
    stop()
    removeEventListener('storage', onStorage)
  }
}

/** They are kept as the text of a plan that holds nothing else, so that they are read as strictly. */
export const textOfEntries = (catalog: CatalogEntries): string => formatPlan({ ...EMPTY_PLAN, catalog })

function entriesOf(text: string): CatalogEntries | undefined {
  if (text === '') return EMPTY_PLAN.catalog
  const plan = parsePlan(text)
  return plan.ok ? plan.value.catalog : undefined
}

function read(store: EntriesStore): string {
  try {
    return localStorage.getItem(key()) ?? ''
  } catch {
    store.keptEntriesFailure.value = 'This browser keeps nothing for other plans: it forbids it.'
    return ''
  }
}

function write(name: string, text: string, store: EntriesStore): boolean {
  try {
    localStorage.setItem(name, text)
    return true
  } catch {
    store.keptEntriesFailure.value =
      'This browser could not keep it for other plans: it has no room, or forbids it. It is offered until this page is closed, and stays in this plan.'
    return false
  }
}
