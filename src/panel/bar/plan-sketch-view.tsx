import { planSketch } from '../../figure/plan-sketch'
import type { Plan } from '../../plan/plan'

const WIDTH_PX = 92
const HEIGHT_PX = 68

/** The small map on the card of a plan; an empty frame while the plan is being looked up, or none can be read. */
export function PlanSketchView({ plan }: { plan: Plan | undefined }) {
  const sketch = plan && planSketch(plan, WIDTH_PX, HEIGHT_PX)
  return (
    <svg class="plan-sketch" viewBox={`0 0 ${WIDTH_PX} ${HEIGHT_PX}`} aria-hidden="true">
      {sketch && (
        <>
          <path class="hazards" d={sketch.hazards} />
          <path class="wires" d={sketch.wires} />
          {sketch.stations.map(([x, y]) => (
            <rect key={`${x} ${y}`} x={x - 2.5} y={y - 2} width={5} height={4} />
          ))}
        </>
      )}
    </svg>
  )
}
