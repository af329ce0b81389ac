import { signal } from '@preact/signals'
import type { LineId } from '../plan/id'
import type { Places } from '../plan/places'
import type { Plan } from '../plan/plan'
import type { Problem } from '../problem'
import type { OwnJournal } from '../share/own-journal'
import type { Sharing, ToChoose } from '../share/sharing'

/** A file that was refused, and every fault found in it. */
export interface RefusedFile {
  readonly name: string
  readonly problems: readonly Problem[]
}

/** A plan that came in, or a line of one with its neighbours. */
export interface ReceivedThing {
  readonly plan: Plan
  /** Fingerprint of the plan that it is a part of; its first line is the one that it is about. */
  readonly partOf?: string
}

/** A file of “Everything of mine”, as `storage/everything.ts` has read it. */
interface BroughtBack {
  readonly name: string
  readonly all: {
    readonly plans: readonly KeptText[]
    readonly versions: readonly KeptText[]
    readonly entries: string
    readonly shelf: string
    readonly settings: Readonly<Record<string, string>>
    readonly maps: readonly { readonly name: string; readonly sizeBytes: number }[]
  }
}

type KeptText = Readonly<Record<'doc' | 'name' | 'savedAt' | 'text', string>>

/** What lies open over map and panel, or waits there for the person. */
export const createOpenThings = () => ({
  /** Help lies over the plan. */
  helpIsOpen: signal(false),
  /** The menu that lies open on the map, and the way to close it; null while none does. */
  mapMenu: signal<{ readonly close: () => void } | null>(null),
  /** A plan is being handed on, taken in, or changed with others; null for none of it. */
  carrying: signal<'out' | 'in' | 'together' | null>(null),
  /** With whom the plan on the table is changed together; null while one is alone. */
  sharing: signal<Sharing | null>(null),
  /** The journal of a plan that nobody shares, by which files of it come together; null until the program is whole. */
  ownJournal: signal<OwnJournal | null>(null),
  /** What two files of one plan had set differently, until somebody has chosen; null for nothing. */
  toChoose: signal<ToChoose | null>(null),
  /** The line that is being walked, on a screen of its own; null for none. */
  walking: signal<LineId | null>(null),
  /** Where on it one is going, m of wire from its `from`; null for nowhere in particular. */
  walkingTo: signal<number | null>(null),
  /** What came in by a link or by codes, until the person has said what becomes of it. */
  received: signal<ReceivedThing | null>(null),
  /** Places of another program’s file that wait for the person to say what each means. */
  importedPlaces: signal<{ readonly name: string; readonly places: Places } | null>(null),
  /** All that somebody kept, from a file, until the person has said what of it comes in. */
  broughtBack: signal<BroughtBack | null>(null),
  refusedFile: signal<RefusedFile | null>(null),
})
