import type { Edit } from '../journal/edit'

/** A journal's beginning as one window gives it to another. */
export interface WindowBeginning {
  /** By which windows with one journal know each other. */
  readonly id: string
  readonly plan: string
  readonly state: unknown
}

/** What windows of one browser say to each other. */
export type WindowWord =
  /** I have the draft under this key on the table: who else? */
  | { readonly is: 'hello'; readonly key: string }
  /** I: here is the journal that we go on with. */
  | ({ readonly is: 'begin'; readonly key: string } & WindowBeginning)
  | { readonly is: 'step'; readonly id: string; readonly edits: readonly Edit[] }
  /** I am still here, and have so many edits of each. */
  | {
      readonly is: 'here'
      readonly id: string
      readonly hand: string
      readonly seen: Readonly<Record<string, number>>
    }
  | { readonly is: 'more'; readonly id: string; readonly beginning: WindowBeginning }
  | { readonly is: 'bye'; readonly id: string; readonly hand: string }
  /** The plan is on a box now, with all that this window knew of: its text. */
  | { readonly is: 'moved'; readonly tag: string; readonly plan: string }
