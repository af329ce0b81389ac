import { layOutPlot, type Plot, type PlotLayout } from '../../report/plot-layout'
import './plot.css'

/** In units of the layout, whose letters are about 11 high: on paper 0.28 mm each, so that they come to 9 pt. */
const SIZE = { width: 310, height: 190 }
const MM_PER_UNIT = 0.28
/** Room for the title above a plot, mm. */
const TITLE_MM = 6
/** Room that a curve's name takes in the key. */
const KEY_STEP = 88

export const PLOT_HEIGHT_MM = SIZE.height * MM_PER_UNIT + TITLE_MM

/** Plots side by side, in black on white: their curves are told apart by their strokes. */
export function PlotRow({ plots }: { plots: readonly Plot[] }) {
  return (
    <div class="plot-row">
      {plots.map((plot) => (
        <figure key={plot.title}>
          <figcaption>{plot.title}</figcaption>
          <svg
            viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
            style={{ width: `${SIZE.width * MM_PER_UNIT}mm`, height: `${SIZE.height * MM_PER_UNIT}mm` }}
            role="img"
            aria-label={`${plot.title}. ${plot.says}`}
          >
            <Drawn plot={plot} drawn={layOutPlot(plot, SIZE)} />
          </svg>
        </figure>
      ))}
    </div>
  )
}

function Drawn({ plot, drawn }: { plot: Plot; drawn: PlotLayout }) {
  const { left, right, top, bottom, xTicks, yTicks, curves, level, places } = drawn
  const keyAt = right - curves.length * KEY_STEP
  const across = yTicks.map(({ at }) => `M${left} ${at}H${right}`).join('')
  const feet = xTicks.map(({ at }) => `M${at} ${bottom}V${bottom + 4}`).join('')
  const upright = places.map(({ at }) => `M${at} ${top}V${bottom}`).join('')
  return (
    <>
      <path class="grid" d={across + upright} />
      <path d={`${feet}M${left} ${top}V${bottom}H${right}`} />
      {yTicks.map(({ at, text }) => (
        <text key={at} x={left - 6} y={at + 4} text-anchor="end">
          {text}
        </text>
      ))}
      {xTicks.map(({ at, text }) => (
        <text key={at} x={at} y={bottom + 16} text-anchor="middle">
          {text}
        </text>
      ))}
      {places.map(({ at, text, anchor }) => (
        <text key={at} x={at} y={top - 5} text-anchor={anchor}>
          {text}
        </text>
      ))}
      <text x="0" y="12">
        {plot.y.label}
      </text>
      <text x={right} y={bottom + 31} text-anchor="end">
        {plot.x.label}
      </text>
      {level && (
        <>
          <path class="level" d={`M${left} ${level.at}H${right}`} />
          <text x={level.nameX} y={level.nameY} text-anchor={level.anchor}>
            {level.text}
          </text>
        </>
      )}
      {curves.map(({ name, path }, k) => (
        <g key={name}>
          <path class={`curve stroke-${k}`} d={path} />
          <path class={`curve stroke-${k}`} d={`M${keyAt + k * KEY_STEP} 8h26`} />
          <text x={keyAt + k * KEY_STEP + 32} y="12">
            {name}
          </text>
        </g>
      ))}
    </>
  )
}
