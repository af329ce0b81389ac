import type { Crossing } from './crossings'

/** From one length to another, m. */
export interface LengthsM {
  readonly fromM: number
  readonly toM: number
}

/** What can be amiss where a line meets a hazard or runs beside it, with the figures that a sentence needs; lengths in m. */
export interface HazardNotes {
  'surface-over-road': { readonly depthM: LengthsM; readonly pastEdgeM: number }
  'surface-over-track': { readonly depthM: number }
  /** How high the wire hangs on the hottest day, how high it must, and what supports would do. */
  'low-over-road': { readonly hangsM: number; readonly mustClearM: number; readonly supportM: number }
  'low-over-track': { readonly hangsM: number; readonly mustClearM: number; readonly supportM: number }
  'low-over-water': { readonly hangsM: number; readonly mustClearM: number; readonly supportM: number }
  'railway-not-under': { readonly stakeM: LengthsM }
  'railway-overhead': {
    /** Only where it hangs too low. */
    readonly hangsM?: number
    readonly mustClearM: number
    /** Too weak to hang there at all: each wire must bear `leastN`. */
    readonly isWeak: boolean
    readonly leastN: number
    readonly mostSpanM: number
  }
  /** How far it runs in the water, m; 0 across what has no width. */
  'surface-over-water': { readonly insideM: number }
  /** `angleDeg` only where it is flatter than square. */
  'power-line-crossing': { readonly isHung: boolean; readonly angleDeg?: number; readonly approachM: number }
  'power-line-near': { readonly nearestM: number }
  'power-line-parallel': { readonly parallelM: number; readonly withinM: number }
  'keep-out-entered': { readonly insideM: number }
}

/** One of them, and the handbook's or the code's place that the figure is from. */
export type HazardNote = {
  readonly [C in keyof HazardNotes]: { readonly code: C; readonly source: string } & HazardNotes[C]
}[keyof HazardNotes]

/** What a crew does at a crossing that is laid as it should be, with its figures; lengths in m. */
export interface Directions {
  'hang-over-traffic': { readonly clearM: number }
  'bury-under-road': { readonly depthM: LengthsM; readonly pastEdgeM: number }
  'bury-under-track': { readonly depthM: number }
  'pass-under-rails': { readonly stakeM: LengthsM }
  'hang-over-water': object
  'lay-in-water': object
  'lead-under-water': object
}

export type Direction = {
  readonly [C in keyof Directions]: { readonly code: C } & Directions[C]
}[keyof Directions]

/** How hung wire hangs at a crossing on the hottest day: its height over the ground there and the sag of its span, m. */
interface Hanging {
  readonly clearM: number
  readonly sagM: number
}

/** A crossing, and what it is judged by. */
export interface MetCrossing {
  readonly crossing: Crossing
  /** Undefined where it has no sag to hang by. */
  readonly hanging: () => Hanging | undefined
  /** What a pair of the wire bears, N; 0 where it is not known. */
  readonly breakN: number
}
