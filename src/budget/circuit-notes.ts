import type { Over } from '../plan/plan'

/** What the figures of a circuit do not show, as codes with figures; stations by id, entries by name. Worded in `words/circuit-notes.ts`. */

/** What a circuit cannot do without. */
export interface Lacks {
  readonly 'one-set': object
  readonly 'no-supply': { readonly station: string }
  readonly 'battery-without-set': { readonly station: string }
  readonly 'no-call': {
    readonly a: string
    readonly b: string
    /** What lamp there is, and why it is no sign: it shows to somebody else, or too faintly. */
    readonly lamp:
      | null
      | { readonly why: 'elsewhere'; readonly at: string }
      | { readonly why: 'dim'; readonly at: string; readonly mA: number; readonly minMA: number }
  }
  readonly 'bell-looks-lifted': { readonly station: string; readonly mA: number; readonly offHookMA: number }
  readonly 'more-without-call': { readonly count: number }
  /** A common-battery set on a board, which sends no direct current. */
  readonly 'no-current': { readonly station: string; readonly supply: string }
  /** More lines at a board or exchange than it has ports; an entry of the catalog with enough of them, by id. */
  readonly 'too-few-ports': {
    readonly supply: string
    readonly lines: number
    readonly ports: number
    readonly wouldDo: string | null
  }
  readonly 'cannot-call-board': { readonly stations: readonly string[]; readonly board: string }
  /** A board that cannot see who calls, or cannot ring out. */
  readonly 'board-without': { readonly supply: string; readonly part: 'drop' | 'generator' }
  readonly 'on-one-port': { readonly stations: readonly string[] }
}

/** What its people should know. */
export interface Remarks {
  readonly 'battery-rings-nothing': object
  readonly 'only-with-battery': { readonly station: string }
  readonly 'indicator-takes-all': { readonly supply: string; readonly volts: number }
  /** Together the bells look like a lifted handset, though none of them alone. */
  readonly 'bells-look-lifted': { readonly mA: number; readonly offHookMA: number }
  /** Only who stands at the lamp is called by it; the rest are not, and have no bell. */
  readonly 'lamp-one-way': { readonly at: string; readonly others: readonly string[] }
  /** Wire ends there, and no telephone hangs on it. */
  readonly 'nobody-listens': { readonly stations: readonly string[] }
  readonly 'worn-unknown': { readonly wire: string }
  readonly 'same-port': { readonly stations: readonly string[] }
  /** What a phantom or simplex saves beside a pair of its own along the same ways. */
  readonly 'rides-and-saves': { readonly over: Over; readonly wireM: number; readonly kg: number }
  /** Another circuit rides on this one: what its coils cost. */
  readonly 'has-coils': { readonly voiceDb: number; readonly ringDb: number }
  readonly 'bells-over-load': {
    readonly stations: readonly string[]
    readonly load: number
    readonly supply: string
    readonly maxLoad: number
  }
}

type Coded<T> = { [C in keyof T]: { readonly code: C } & T[C] }[keyof T]
export type Lack = Coded<Lacks>
export type Remark = Coded<Remarks>
/** A circuit that lacks a set, or what feeds one, is not finished: its other figures say nothing yet. */
export const isUnfinished = (missing: readonly Lack[]): boolean =>
  missing.some(({ code }) => UNFINISHED.includes(code))

const UNFINISHED: readonly Lack['code'][] = ['one-set', 'no-supply', 'no-current', 'battery-without-set']

export type LackOf<C extends keyof Lacks> = Lacks[C]
