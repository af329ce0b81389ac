import type { ReadonlySignal } from '@preact/signals'
import type { Plan } from '../plan/plan'
import type { WindowBeginning } from './window-words'

/** Where a hand was, and when. */
export interface Spot {
  readonly position: readonly [lonDeg: number, latDeg: number]
  readonly accuracyM: number
  readonly atMs: number
}

/** Another one at the same plan. */
export interface OtherHand {
  readonly hand: string
  readonly name: string
  /** The thing that they changed last, and the one they have selected, as keys of the journal; empty for none. */
  readonly at: string
  readonly on: string
  /** When they were last heard, ms. */
  readonly heardMs: number
  /** Where they are, if they tell it. */
  readonly spot?: Spot
}

/** A property that several set unseen of each other: to be chosen by somebody. */
export interface TornProperty {
  readonly key: string
  /** What holds first. */
  readonly choices: readonly { readonly who: string; readonly atMs: number; readonly value: unknown }[]
}

/** What was set differently and waits for somebody who chooses. */
export interface ToChoose {
  /** Absent where the choices are not of hands. */
  readonly names?: () => readonly string[]
  readonly torn: ReadonlySignal<readonly TornProperty[]>
  readonly mayWrite: boolean
  readonly choose: (key: string, value: unknown) => void
}

/** One step of one hand, as the log tells it. */
export interface LoggedStep {
  readonly who: string
  readonly atMs: number
  readonly keys: readonly string[]
  /** Of these the things that it put in, and that it took out. */
  readonly made: readonly string[]
  readonly gone: readonly string[]
}

/** One edit of another hand that has come onto the table. */
export interface TakenEdit {
  readonly who: string
  readonly key: string
}

/** `together`: all is on the box. `apart`: the box is not reached, and what is done here waits. `moved`: the plan goes on under other keys. */
export type Standing = 'coming' | 'together' | 'apart' | 'refused' | 'moved' | 'too-large'

/** What only a plan has that a box carries. */
export interface BoxSide {
  readonly standing: ReadonlySignal<Standing>
  /** Steps of one's own that the box has not on its disk yet. */
  readonly waiting: ReadonlySignal<number>
  /** The address by which others join. */
  readonly invitation: (mayWrite: boolean) => string
  /** Other keys for whoever is invited anew: those who have the old ones are shut out. */
  readonly changeKeys: () => Promise<void>
  /** Goes on alone on this screen, with the plan as it is now. */
  readonly stop: () => Promise<void>
  /** Reads all that the box has, so that the log begins with the plan. A sentence where that does not go; else empty. */
  readonly readAll: () => Promise<string>
}

/** A plan that several change together, as screens show it. */
export interface Sharing extends ToChoose {
  /** Null where only windows of this browser have the plan on the table. */
  readonly box: BoxSide | null
  readonly others: ReadonlySignal<readonly OtherHand[]>
  /** Where hands said that they were, also those that are gone. */
  readonly spots: ReadonlySignal<readonly OtherHand[]>
  /** Tells the others where this screen is, as long as it says so; null ends it. */
  readonly tellSpot: (spot: Spot | null) => void
  /** What was mended or refused, or came of it, since it was last put away; sentences. */
  readonly said: ReadonlySignal<readonly string[]>
  readonly tell: (sentences: readonly string[]) => void
  /** What others did, as it last came onto the table. */
  readonly taken: ReadonlySignal<readonly TakenEdit[]>
  readonly log: ReadonlySignal<readonly LoggedStep[]>
  /** The plan with all that was taken out, as far as it is still known: the log names it. */
  readonly everKnown: () => Plan
  readonly name: { value: string }
  /** What all hands are called that the plan knows: each has a sign of its own among them. */
  readonly names: () => readonly string[]
  /** Leads the plan back to how it was after a step of the log: an edit like any other. */
  readonly goBackTo: (step: LoggedStep) => void
  /** The plan as its file takes it along: with its journal. */
  readonly filePlan: () => Plan
  /** Takes in what a file of this plan brings; false for one of another plan. */
  readonly takeFile: (plan: Plan) => boolean
  readonly putAway: () => void
  /** What has come in and is not on the table yet comes there at once. */
  readonly absorbNow: () => void
  /** Where windows share: what one more window begins with, and whether this journal gives way to one that another has begun with. */
  readonly begin?: () => WindowBeginning
  readonly giveWayTo?: (other: WindowBeginning) => boolean
  readonly leave: () => void
}
