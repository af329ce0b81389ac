import type { LineProfile } from '../report/line-profile'
import type { Point } from './geometry'
import type { FlatProfile } from './profile-drawing'
import { cutToWidth, textWidthEm } from './text-width'

/** A line's profile, drawn alike on the screen and on paper: all distances follow from the size of its letters. */
export function ProfileShapes({ drawing, ends }: { drawing: FlatProfile; ends: LineProfile['ends'] }) {
  const { letter, left, right, bottom, xTicks, yTicks } = drawing
  const last = xTicks.length - 1
  const leftOfAxis = left - letter * 0.36
  // Each has half of the width.
  const room = (right - left) / 2 / letter - 0.8
  const [from, to] = [cutToWidth(ends[0], room, true), cutToWidth(ends[1], room, true)]
  return (
    <g>
      {yTicks.map(({ y, text }) => (
        <g key={text}>
          <path class="level" d={`M${left} ${y}H${right}`} />
          <text x={leftOfAxis} y={y + letter / 3} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      <path class="body" d={drawing.body} />
      <path class="steep" d={drawing.steep} />
      <path class="ground" d={drawing.ground} />
      {drawing.wires.map(({ lay, path }, i) => (
        <path key={i} class={`laid laid-${lay}`} d={path} />
      ))}
      <path class="supports" d={drawing.supports} />
      <path class="hung" d={drawing.hung} />
      {drawing.bends.map(({ x, y }, i) => (
        <circle key={i} class="bend" cx={x} cy={y} r={letter * 0.23} />
      ))}
      {drawing.crossings.map(({ x, y, text }, i) => (
        <g key={i}>
          <path class="crossing" d={`M${x} ${letter * 1.4}V${y}`} />
          <text class="named" x={x} y={letter} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      <path class="axis" d={`M${left} ${bottom}H${right}`} />
      {xTicks.map(({ x, text }, i) => (
        // The unit stands behind the last number, which keeps its place.
        <text
          key={text}
          x={Math.min(
            x - (text.length * letter) / 4,
            drawing.width - textWidthEm(i === last ? `${text} ${drawing.xUnit}` : text) * letter,
          )}
          y={bottom + letter * 1.2}
        >
          {i === last ? `${text} ${drawing.xUnit}` : text}
        </text>
      ))}
      <text x={leftOfAxis} y={letter} text-anchor="end">
        {drawing.yUnit}
      </text>
      <EndName text={from} at={[left + letter * 0.3, bottom - letter / 2]} letter={letter} />
      <EndName
        text={to}
        at={[right - letter * 0.3 - textWidthEm(to, true) * letter, bottom - letter / 2]}
        letter={letter}
      />
    </g>
  )
}

/** A station's name on a ground of its own, so that the profile does not run through it. */
function EndName({ text, at: [x, y], letter }: { text: string; at: Point; letter: number }) {
  return (
    <g>
      <rect
        class="halo"
        x={x - letter * 0.15}
        y={y - letter * 0.85}
        width={(textWidthEm(text, true) + 0.3) * letter}
        height={letter * 1.1}
      />
      <text class="end" x={x} y={y}>
        {text}
      </text>
    </g>
  )
}
