import { planeAbout } from '../../geo/plane'
import { type Plan, verticesOf } from '../../plan/plan'

const [WIDE, HIGH, EDGE] = [120, 90, 16] as const

/** A net at a glance: wires in copper, a box for each telephone, a cross where a supply stands. */
export function NetSketch({ plan }: { plan: Plan }) {
  const stations = [...plan.stations.values()]
  const plane = planeAbout(stations.map(({ position }) => position))
  const lines = [...plan.lines.values()]
  const paths = lines.map((line) => verticesOf(plan, line).map(plane.toPlane))
  const all = [...paths.flat(), ...stations.map(({ position }) => plane.toPlane(position))]
  const [east, north] = [all.map(([x]) => x), all.map(([, y]) => y)]
  const [west, east1, south, north1] = [
    Math.min(...east),
    Math.max(...east),
    Math.min(...north),
    Math.max(...north),
  ]
  const scale = Math.min(
    (WIDE - 2 * EDGE) / Math.max(1, east1 - west),
    (HIGH - 2 * EDGE) / Math.max(1, north1 - south),
  )
  const at = ([x, y]: readonly [number, number]) =>
    [WIDE / 2 + (x - (west + east1) / 2) * scale, HIGH / 2 - (y - (south + north1) / 2) * scale] as const
  const circuits = [...plan.circuits.values()]
  // Wires that take the same way lie side by side.
  const seen = new Map<string, number>()
  return (
    <svg class="net-sketch" viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true">
      {paths.map((path, k) => {
        const key = path.map((point) => at(point).map(Math.round).join()).join(' ')
        const beside = seen.get(key) ?? 0
        seen.set(key, beside + 1)
        return (
          <polyline
            key={lines[k]!.id}
            class="wire"
            transform={`translate(0 ${4 * beside})`}
            points={path.map((point) => at(point).join()).join(' ')}
          />
        )
      })}
      {stations.map(({ id, position }) => {
        const [x, y] = at(plane.toPlane(position))
        const hasSet = circuits.some(({ sets }) => sets.has(id))
        const hasSupply = circuits.some(({ supply }) => supply?.at === id)
        return hasSet ? (
          <g key={id}>
            <rect class="box" x={x - 8} y={y - 6} width={16} height={12} rx={3} />
            {hasSupply && <path class="cross" d={`M${x - 4} ${y}h8M${x} ${y - 4}v8`} />}
          </g>
        ) : (
          <circle key={id} class="joint" cx={x} cy={y} r={2.5} />
        )
      })}
    </svg>
  )
}
