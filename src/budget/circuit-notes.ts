/** What the figures of a circuit do not show, as codes with figures; stations by id, entries by name. Worded in `words/circuit-notes.ts`. */

/** What a circuit cannot do without. */
export interface Lacks {
  readonly 'one-set': object
  readonly 'no-supply': { readonly station: string }
  readonly 'battery-without-set': { readonly station: string }
  readonly 'no-call': { readonly a: string; readonly b: string }
  readonly 'more-without-call': { readonly count: number }
}

/** What its people should know. */
export interface Remarks {
  readonly 'battery-rings-nothing': object
  readonly 'only-with-battery': { readonly station: string }
  readonly 'indicator-takes-all': { readonly supply: string; readonly volts: number }
  readonly 'same-port': { readonly stations: readonly string[] }
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
