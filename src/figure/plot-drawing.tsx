import { layOutPlot, type Plot, type PlotLayout, type PlotSize } from './plot-layout'

/** Room that a curve's name takes in the key. */
const KEY_STEP = 92

/** The drawing of a plot: its curves are told apart by their strokes, and a sentence tells them to those who do not see. */
export function PlotDrawing({ plot, size, mmPerUnit }: { plot: Plot; size: PlotSize; mmPerUnit?: number }) {
  const { width, height } = size
  const drawn = layOutPlot(plot, size)
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      style={mmPerUnit ? { width: `${width * mmPerUnit}mm`, height: `${height * mmPerUnit}mm` } : undefined}
      role="img"
      aria-label={`${plot.title}. ${plot.says}`}
    >
      <Axes plot={plot} drawn={drawn} />
      <Key drawn={drawn} />
      {drawn.places.map(({ at, text, anchor }) => (
        <g key={at} class="place">
          <line x1={at} x2={at} y1={drawn.top} y2={drawn.bottom} />
          <text x={at} y={drawn.top - 5} text-anchor={anchor}>
            {text}
          </text>
        </g>
      ))}
      {drawn.level && (
        <g class="level">
          <line x1={drawn.left} x2={drawn.right} y1={drawn.level.at} y2={drawn.level.at} />
          <text x={drawn.level.nameX} y={drawn.level.nameY} text-anchor={drawn.level.anchor}>
            {drawn.level.text}
          </text>
        </g>
      )}
      {drawn.curves.map(({ name, path }, k) => (
        <path key={name} class={`curve stroke-${k}`} d={path} />
      ))}
    </svg>
  )
}

function Axes({ plot, drawn }: { plot: Plot; drawn: PlotLayout }) {
  const { left, right, top, bottom, xTicks, yTicks } = drawn
  return (
    <g class="axes">
      {yTicks.map(({ at, text }) => (
        <g key={at}>
          <line class="grid" x1={left} x2={right} y1={at} y2={at} />
          <text x={left - 6} y={at + 4} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      {xTicks.map(({ at, text }) => (
        <g key={at}>
          <line x1={at} x2={at} y1={bottom} y2={bottom + 4} />
          <text x={at} y={bottom + 16} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      <path d={`M${left} ${top}V${bottom}H${right}`} />
      <text class="label" x="0" y="12">
        {plot.y.label}
      </text>
      <text class="label" x={right} y={bottom + 31} text-anchor="end">
        {plot.x.label}
      </text>
    </g>
  )
}

/** Which stroke is which, at the top right. */
function Key({ drawn: { right, curves } }: { drawn: PlotLayout }) {
  const start = right - curves.length * KEY_STEP
  return (
    <g class="key">
      {curves.map(({ name }, k) => (
        <g key={name} transform={`translate(${start + k * KEY_STEP} 8)`}>
          <line class={`curve stroke-${k}`} x1="0" x2="26" y1="0" y2="0" />
          <text x="32" y="4">
            {name}
          </text>
        </g>
      ))}
    </g>
  )
}
