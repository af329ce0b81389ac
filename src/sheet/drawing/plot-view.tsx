import { PlotDrawing } from '../../figure/plot-drawing'
import type { Plot } from '../../figure/plot-layout'
import './plot.css'

/** In units of the drawing, whose letters are 11 high: on paper 0.28 mm each, so that they come to 9 pt. */
const SIZE = { width: 310, height: 190 }
const MM_PER_UNIT = 0.28
/** Room for the title above a plot, mm. */
const TITLE_MM = 6

export const PLOT_HEIGHT_MM = SIZE.height * MM_PER_UNIT + TITLE_MM

/** Plots side by side, in black on white. */
export function PlotRow({ plots }: { plots: readonly Plot[] }) {
  return (
    <div class="plot-row">
      {plots.map((plot) => (
        <figure key={plot.title}>
          <figcaption>{plot.title}</figcaption>
          <PlotDrawing plot={plot} size={SIZE} mmPerUnit={MM_PER_UNIT} />
        </figure>
      ))}
    </div>
  )
}
