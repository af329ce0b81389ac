import { PlotDrawing } from '../../figure/plot-drawing'
import type { Plot } from '../../figure/plot-layout'

/** In units of the drawing; it is as wide as the card. */
const SIZE = { width: 356, height: 220 }

/** One plot under its title. */
export function PlotView({ plot }: { plot: Plot }) {
  return (
    <figure class="plot">
      <figcaption>{plot.title}</figcaption>
      <PlotDrawing plot={plot} size={SIZE} />
    </figure>
  )
}
