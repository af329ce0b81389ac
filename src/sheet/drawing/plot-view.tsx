import { PlotDrawing } from '../../figure/plot-drawing'
import type { Plot } from '../../figure/plot-layout'
import './plot.css'
import { PLOT_MM_PER_UNIT, PLOT_SIZE } from './plot-size'

/** Plots side by side, in black on white. */
export function PlotRow({ plots }: { plots: readonly Plot[] }) {
  return (
    <div class="plot-row">
      {plots.map((plot) => (
        <figure key={plot.title}>
          <figcaption>{plot.title}</figcaption>
          <PlotDrawing plot={plot} size={PLOT_SIZE} mmPerUnit={PLOT_MM_PER_UNIT} />
        </figure>
      ))}
    </div>
  )
}
