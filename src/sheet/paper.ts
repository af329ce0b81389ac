import type { Block } from './layout/block'
import type { SheetCode } from './layout/sheet-code'
import type { Card } from './scene/card-sheets'

/** One document: its sheets are counted by themselves, so that it can go to those who need it. */
export interface Paper {
  readonly title: string
  /** Which one of its kind; empty where there is but one. */
  readonly about: string
  /** All of it, also where it is set on cards. */
  readonly blocks: readonly Block[]
  /** In the place of sheets of its own. */
  readonly cards?: readonly Card[]
  /** Stands on its first sheet. */
  readonly code?: SheetCode
  /** Drawn to the edges of the sheet, for what is cut or comes off it: no head, no foot, no margin. */
  readonly isBare?: true
}
