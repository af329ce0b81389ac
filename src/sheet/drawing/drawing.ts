import type { Plot } from '../../figure/plot-layout'
import type { StripDrawing } from '../../figure/strip'
import type { Norths } from '../paper-source'
import type { Scene } from '../scene/scene'
import type { CircuitDrawing } from './circuit-drawing'
import type { LegendSigns } from './legend-signs'
import type { MapDrawing } from './map-drawing'

/** What stands drawn on a sheet, as a value: it is made in a worker, and shown by `DrawingView`. */
export type Drawing =
  | {
      readonly kind: 'map'
      readonly drawing: MapDrawing
      readonly norths: Norths
      readonly size: readonly [widthMm: number, heightMm: number]
      /** False where several maps share a legend. */
      readonly hasLegend?: boolean
      /** Keeps its clipping apart from another map's. */
      readonly id: string
    }
  | {
      readonly kind: 'legend'
      readonly signs: LegendSigns
      readonly norths: Norths
      readonly widthMm: number
    }
  | { readonly kind: 'circuit'; readonly drawing: CircuitDrawing; readonly name: string }
  | { readonly kind: 'scene'; readonly scene: Scene }
  | { readonly kind: 'plots'; readonly plots: readonly Plot[] }
  | { readonly kind: 'strip'; readonly drawing: StripDrawing; readonly name: string }
