import type { Point } from '../../figure/geometry'
import type { LineProfile } from '../../report/line-profile'
import { textWidthEm } from '../layout/text-width'
import type { FlatProfile } from './drawing'
import './profile.css'

/** A line's profile in black on white, 1 unit to the millimetre. */
export function ProfileView({
  drawing,
  profile,
  letterMm,
}: {
  drawing: FlatProfile
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
      <EndName text={from} at={[left + 1, bottom - letterMm / 2]} letterMm={letterMm} />
      <EndName
        text={to}
        at={[right - 1 - endWidthMm(to, letterMm), bottom - letterMm / 2]}
        letterMm={letterMm}
      />
    </svg>
  )
}

const endWidthMm = (text: string, letterMm: number) => textWidthEm(text, true) * letterMm

/** A station's name on a ground of its own, so that the profile does not run through it. */
function EndName({ text, at: [x, y], letterMm }: { text: string; at: Point; letterMm: number }) {
  return (
    <g>
      <rect
        class="halo"
        x={x - 0.4}
        y={y - letterMm * 0.85}
        width={endWidthMm(text, letterMm) + 0.8}
        height={letterMm * 1.1}
      />
      <text class="end" x={x} y={y}>
        {text}
      </text>
    </g>
  )
}
