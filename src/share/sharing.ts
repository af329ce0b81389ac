import type { ReadonlySignal } from '@preact/signals'
import type { Plan } from '../plan/plan'

/** Another one at the same plan. */
export interface OtherHand {
  readonly hand: string
  readonly name: string
  /** The thing that they changed last, as a key of the journal; empty for none. */
  readonly at: string
  /** When they were last heard, ms. */
  readonly heardMs: number
}

/** A property that several set unseen of each other: to be chosen by somebody. */
export interface TornProperty {
  readonly key: string
  /** What holds first. */
  readonly choices: readonly { readonly who: string; readonly atMs: number; readonly value: unknown }[]
}

/** One step of one hand, as the log tells it. */
export interface LoggedStep {
  readonly who: string
  readonly atMs: number
  readonly keys: readonly string[]
}

/** A plan that several change together, as screens show it. */
export interface Sharing {
  /** `together`: all is on the box. `apart`: the box is not reached, and what is done here waits. */
  readonly standing: ReadonlySignal<'coming' | 'together' | 'apart' | 'refused'>
  /** Steps of one's own that the box has not on its disk yet. */
  readonly waiting: ReadonlySignal<number>
  readonly others: ReadonlySignal<readonly OtherHand[]>
  readonly torn: ReadonlySignal<readonly TornProperty[]>
  /** What was mended or refused since it was last put away; sentences. */
  readonly said: ReadonlySignal<readonly string[]>
  readonly log: ReadonlySignal<readonly LoggedStep[]>
  readonly mayWrite: boolean
  readonly name: { value: string }
  /** The address by which others join. */
  readonly invitation: (mayWrite: boolean) => string
  readonly choose: (key: string, value: unknown) => void
  /** Leads the plan back to how it was after a step of the log: an edit like any other. */
  readonly goBackTo: (step: LoggedStep) => void
  /** The plan's file with its journal. */
  readonly fileText: () => string
  /** Takes in what a file of this plan brings; false for one of another plan. */
  readonly takeFile: (plan: Plan) => boolean
  readonly putAway: () => void
  /** Other keys for whoever is invited anew: those who have the old ones are shut out. */
  readonly changeKeys: () => Promise<void>
  readonly leave: () => void
}
