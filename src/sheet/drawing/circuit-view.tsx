import type { CircuitDrawing } from './circuit-drawing'
import { StationSymbol } from './map-symbols'

/** A circuit diagram, not to scale. Sizes agree with circuit-drawing.ts. */
export function CircuitView({ drawing, name }: { drawing: CircuitDrawing; name: string }) {
  return (
    <svg
      class="circuit-view"
      viewBox={`0 0 ${drawing.widthMm} ${drawing.heightMm.toFixed(2)}`}
      role="img"
      aria-label={`Circuit diagram of ${name}`}
    >
      {drawing.wires.map(({ points, above, below }, i) => {
        const [bend, end] = points.slice(-2)
        const x = ((bend?.[0] ?? 0) + (end?.[0] ?? 0)) / 2
        return (
          <g key={i}>
            <path
              class="wire"
              d={points
                .map(([px, py], k) => `${k === 0 ? 'M' : 'L'}${px.toFixed(2)} ${py.toFixed(2)}`)
                .join('')}
            />
            {[...above.toReversed(), ...below].map((word, k) => (
              <text
                key={word}
                x={x}
                y={(end?.[1] ?? 0) + (k < above.length ? -1 - 3.3 * k : 3.3 * (k - above.length + 1))}
                text-anchor="middle"
              >
                {word}
              </text>
            ))}
          </g>
        )
      })}
      {drawing.boxes.map(({ box, name: nameLines, lines, hasSet, sign }, i) => (
        <g key={i}>
          <rect
            class={hasSet || sign !== 'telephone' ? 'node' : 'node joint'}
            x={box.left}
            y={box.top}
            width={box.right - box.left}
            height={box.bottom - box.top}
          />
          <StationSymbol at={[box.left + 3.9, box.top + 3.6]} sign={sign} />
          <text class="name" x={box.left + 7.6} y={box.top + 4.4}>
            {nameLines.map((line, k) => (
              <tspan key={k} x={box.left + 7.6} dy={k === 0 ? 0 : 4.2}>
                {line}
              </tspan>
            ))}
          </text>
          <text x={box.left + 7.6} y={box.top + 4.2 + nameLines.length * 4.2 - 0.6}>
            {lines.map((line, k) => (
              <tspan key={k} x={box.left + 7.6} dy={k === 0 ? 0 : 3.6}>
                {line}
              </tspan>
            ))}
          </text>
        </g>
      ))}
    </svg>
  )
}
