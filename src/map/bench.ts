import type { ReadonlySignal, Signal } from '@preact/signals'
import type { HazardId, LineId, StationId } from '../plan/id'
import type { HazardKind, Lay } from '../plan/plan'
import type { UnderWay } from '../plan/under-way'
import type { Store } from '../state/store'
import type { Box } from './layers/place-names'
import type { Gathered } from './view/gather-stations'
import type { MapView, Point } from './view/map-view'
import type { Moving } from './view/moving'

/** A bend of a line or a corner of a hazard, picked by hand: what the panel has no card for. */
export type Picked =
  | { readonly kind: 'bend'; readonly line: LineId; readonly index: number }
  | { readonly kind: 'corner'; readonly hazard: HazardId; readonly index: number }
  | null

/** A line or a hazard under way: the ghost of what the next click would make. */
export interface Ghost {
  readonly line: LineId
  /** The station that stands at the pointer for the while; null where the pointer is on a real one. */
  readonly station: StationId | null
}

/** What the tools of the map share: the store, the map, and what only the map knows. */
export interface Bench {
  readonly store: Store
  readonly view: MapView
  readonly picked: Signal<Picked>
  readonly ghost: Signal<Ghost | null>
  /** What the hand has hold of: drawn above what stands. */
  readonly moving: ReadonlySignal<Moving>
  /** The stations that stand, those that would lie on each other together. */
  readonly gathered: ReadonlySignal<readonly Gathered[]>
  /** Where station and hazard names stand, so that other labels keep off them. */
  readonly names: Signal<readonly Box[]>
  /** How the next leg is laid, and of what kind the next hazard is. */
  readonly lay: Signal<Lay>
  readonly hazardKind: Signal<HazardKind>
  /** Says a sentence to those who cannot see the map. */
  readonly say: (sentence: string) => void
}

/** Where a pointer, a finger or the crosshair is aimed. */
export interface Aim {
  readonly point: Point
  readonly position: readonly [lonDeg: number, latDeg: number]
  /** How far off a thing may be and still be meant, px. */
  readonly reachPx: number
  /** Adds to what is selected (the shift key). */
  readonly adding: boolean
  readonly touch: boolean
}

/** A button of the hint strip: what can be done with what is under way. */
export interface Step {
  readonly words: string
  readonly act: () => void
}

/** Something held and dragged. `drop` keeps what the drag has made, `letGo` forgets it. */
export interface Hold {
  move(aim: Aim): void
  drop(): void
  letGo(): void
}

/** A tool as the map uses it. What returns a boolean says whether there was anything to do. */
export interface MapTool {
  /** What to do next, in a sentence. */
  hint(): string
  click(aim: Aim): void
  doubleClick?(aim: Aim): void
  hover?(aim: Aim): void
  hold?(aim: Aim): Hold | null
  /** Ends what is under way, at the aim. */
  finish?(aim: Aim): boolean
  /** Takes back the last step of what is under way. */
  back?(): boolean
  cancel?(): boolean
  /** Forgets what is under way: the plan that it was for is another. */
  forget?(): void
  /** Takes up again what was under way when the plan was last left. */
  takeUp?(what: UnderWay): void
  /** The pointer has left the map. */
  leave?(): void
  /** Something has been begun that is not on the plan yet. */
  underWay?(): boolean
  /** What fingers can do with it, who have no keys. */
  steps?(): readonly Step[]
}
