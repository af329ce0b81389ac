import { SceneView } from '../scene/scene-view'
import { CircuitView } from './circuit-view'
import type { Drawing } from './drawing'
import { SharedLegend } from './map-legend'
import { MapView } from './map-view'
import { PlotRow } from './plot-view'
import { StripView } from './strip-view'

/** Any drawing, in black on white. */
export function DrawingView({ drawing }: { drawing: Drawing }) {
  switch (drawing.kind) {
    case 'map':
      return <MapView {...drawing} />
    case 'legend':
      return <SharedLegend {...drawing} />
    case 'circuit':
      return <CircuitView {...drawing} />
    case 'scene':
      return <SceneView {...drawing} />
    case 'plots':
      return <PlotRow {...drawing} />
    case 'strip':
      return <StripView {...drawing} />
  }
}
