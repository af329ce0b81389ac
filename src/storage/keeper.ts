import type { Everything } from '../files/everything-file'
import type { Plan } from '../plan/plan'
import type { UnderWay } from '../plan/under-way'
import type { TakenIn } from './all-kept'
import type { DraftEntry, VersionEntry } from './kept-records'

/** What is kept and who is told: the parts of the store that this needs. */
export interface KeptStore {
  /** The plan as last settled. */
  readonly settled: { subscribe(listener: (plan: Plan) => void): () => void; peek(): Plan }
  /** The plan as it was opened: another value means another document. */
  readonly opened: { peek(): Plan }
  /** The plan as a file last took it; null where none has. */
  readonly inFile: { peek(): Plan | null }
  /** What the hand has begun to draw. */
  readonly underWay: {
    subscribe(listener: (drawn: UnderWay | null) => void): () => void
    peek(): UnderWay | null
  }
  /** What was under way on a plan that is opened, to be taken up again. */
  readonly takenUp: { value: UnderWay | null }
  readonly open: (plan: Plan) => void
  readonly edit: (change: (plan: Plan) => Plan) => void
  readonly notice: { value: string }
  /** Why the last changes are not kept in this browser, in a sentence; empty while they are. */
  readonly notKept: { value: string }
}

/** The plans kept in this browser, as the list of plans uses them. */
export interface Keeper {
  /** The last written first; null where the browser gives no store. */
  readonly list: () => Promise<readonly DraftEntry[] | null>
  readonly open: (key: string) => Promise<void>
  /** Puts a plan among the removed, of which the last ones can be brought back. */
  readonly remove: (key: string) => Promise<void>
  readonly bringBack: (key: string) => Promise<void>
  readonly erase: (key: string) => Promise<void>
  /** Key of the plan on the table; null while it is not kept. */
  readonly openKey: () => string | null
  /** A name for the plan on the table that stays with it as long as it is kept. */
  readonly openDoc: () => string
  /** Whether other windows have the plan on the table too, and all write one draft of it. */
  readonly shareDraft: (isJoint: boolean) => void
  /** A kept plan, to be looked at; undefined where none can be made of its record. */
  readonly planOf: (key: string) => Promise<Plan | undefined>
  /** Gives a kept plan another title: one that is not on the table. */
  readonly rename: (key: string, title: string) => Promise<void>
  /** Keeps a plan beside the one on the table. False where nothing can be kept, which is told. */
  readonly keepAside: (plan: Plan) => Promise<boolean>
  /** What a record holds, for a file: also where no plan can be made of it. */
  readonly textOf: (key: string) => Promise<string>
  /** The versions of the plan on the table, the last kept first. */
  readonly versions: () => Promise<readonly VersionEntry[]>
  /** Those versions as plans; what cannot be read is left out. */
  readonly versionPlans: () => Promise<readonly Plan[]>
  readonly keepVersion: (name: string) => Promise<void>
  readonly bringBackVersion: (version: VersionEntry) => Promise<void>
  /** Gives the way to put it back. */
  readonly removeVersion: (id: string) => Promise<() => Promise<void>>
  /** Every plan and version that is kept; nothing where the browser keeps none. */
  readonly allKept: () => Promise<Pick<Everything, 'plans' | 'versions'>>
  /** Takes in plans and versions beside those that are kept. */
  readonly takeIn: (all: Pick<Everything, 'plans' | 'versions'>) => Promise<TakenIn>
  readonly flush: () => Promise<void>
  readonly stop: () => void
}

const LEAVING = 'fieldpair-leaving'

/**
 * Says that the page may be left: whoever holds what is not yet in the plan hands it over now. An event of its own, on the document: what a
 * window hears comes to its listeners in the order in which they began to listen, capturing or not (Chromium 156).
 */
export const tellLeaving = (): boolean => document.dispatchEvent(new Event(LEAVING))

/** Hears it. Returns how to stop. */
export function onLeaving(answer: () => void): () => void {
  document.addEventListener(LEAVING, answer)
  return () => document.removeEventListener(LEAVING, answer)
}
