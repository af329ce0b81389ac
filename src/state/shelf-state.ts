import { signal } from '@preact/signals'
import type { Stores } from '../shelf/shelf'

/** What lies on a person's shelf: kept in this browser, and no part of any plan. */
export interface KeptShelf extends Stores {
  /** What no net is reckoned with, but what is looked for on the morning. */
  readonly also: { readonly reels: number; readonly people: number }
}

export const NOTHING_ON_SHELF: KeptShelf = {
  wires: [],
  sets: [],
  supplies: [],
  cells: [],
  rods: [],
  also: { reels: 0, people: 0 },
}

export const createShelfState = () => ({
  shelfIsOpen: signal(false),
  onShelf: signal<KeptShelf>(NOTHING_ON_SHELF),
  /** Why it is not kept beyond this page, in a sentence; empty where all is well. */
  onShelfFailure: signal(''),
})
