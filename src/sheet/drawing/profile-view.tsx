import type { LineProfile } from '../../report/line-profile'
import type { ProfileDrawing } from '../../report/profile-drawing'
import './profile.css'

/** A line's profile in black on white, 1 unit to the millimetre. */
export function ProfileView({
  drawing,
  profile,
  letterMm,
}: {
  drawing: ProfileDrawing
  profile: LineProfile
  letterMm: number
}) {
  const { width, height, left, right, bottom, xTicks, yTicks } = drawing
  const [from, to] = profile.ends
  const last = xTicks.length - 1
  const namesY = bottom + letterMm * 1.25
  return (
    <svg
      class="profile-sheet"
      viewBox={`0 0 ${width} ${height}`}
      style={{ width: `${width}mm`, height: `${height}mm`, fontSize: `${letterMm}px` }}
      role="img"
      aria-label={`Profile from ${from} to ${to}`}
    >
      {yTicks.map(({ y, text }) => (
        <g key={text}>
          <path class="level" d={`M${left} ${y}H${right}`} />
          <text x={left - 1} y={y + letterMm / 3} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      <path class="steep" d={drawing.steep} />
      <path class="ground" d={drawing.ground} />
      {drawing.wires.map(({ lay, path }, i) => (
        <path key={i} class={`laid laid-${lay}`} d={path} />
      ))}
      <path class="supports" d={drawing.supports} />
      <path class="hung" d={drawing.hung} />
      {drawing.bends.map(({ x, y }, i) => (
        <circle key={i} cx={x} cy={y} r={0.7} />
      ))}
      {drawing.crossings.map(({ x, y, text }, i) => (
        <g key={i}>
          <path class="crossing" d={`M${x} ${letterMm * 1.4}V${y}`} />
          <text x={x} y={letterMm} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      <path class="axis" d={`M${left} ${bottom}H${right}`} />
      {xTicks.map(({ x, text }, i) => (
        <text key={text} x={x - (text.length * letterMm) / 4} y={namesY}>
          {i === last ? `${text} ${drawing.xUnit}` : text}
        </text>
      ))}
      <text x={left - 1} y={letterMm} text-anchor="end">
        {drawing.yUnit}
      </text>
      <text class="end" x={left + 1} y={bottom - letterMm / 2}>
        {from}
      </text>
      <text class="end" x={right - 1} y={bottom - letterMm / 2} text-anchor="end">
        {to}
      </text>
    </svg>
  )
}
