import { BUILT_IN } from '../../catalog/built-in'
import { mergeCatalogs } from '../../catalog/catalog'
import type { Supply } from '../../catalog/supply'
import { type Plan, stationName } from '../../plan/plan'
import { OnDemand } from '../question'

/** Where the two telephones and their terminals are drawn. */
const [LEFT, RIGHT, UPPER, LOWER] = [96, 264, 34, 66] as const

/** The wiring of two telephones on one circuit, terminal by terminal; nothing for any other net. */
export function HookUp({ plan }: { plan: Plan }) {
  const [circuit, ...others] = plan.circuits.values()
  if (!circuit || others.length > 0 || circuit.sets.size !== 2) return null
  const { supplies, sets } = mergeCatalogs(BUILT_IN, plan.catalog)
  const supply = circuit.supply && supplies.get(circuit.supply.type)
  // The supply's own station stands left.
  const [a, b] = [...circuit.sets.keys()].sort((one) => (one === circuit.supply?.at ? -1 : 1))
  const [near, far] = [stationName(plan, a!), stationName(plan, b!)]
  const setName = (id: typeof a) => sets.get(circuit.sets.get(id!)!)?.name ?? ''
  const steps = stepsOf(supply ?? null, near, far, plan.lines.size > 1)
  return (
    <OnDemand title="How it is wired, terminal by terminal">
      <svg class="hook-up" viewBox="0 0 360 100" role="img" aria-label={steps.join(' ')}>
        <Telephone x={LEFT} side={-1} name={near} />
        <Telephone x={RIGHT} side={1} name={far} />
        <Wires kind={supply?.kind ?? null} />
      </svg>
      <ol class="first-steps">
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p class="soft">
        {near}: {setName(a)}. {far}: {setName(b)}.
      </p>
    </OnDemand>
  )
}

function Telephone({ x, side, name }: { x: number; side: -1 | 1; name: string }) {
  const from = side < 0 ? x - 84 : x
  return (
    <g>
      <rect class="box" x={from} y={18} width={84} height={64} rx={5} />
      <text x={from + 42} y={54} text-anchor="middle">
        {name.length > 12 ? `${name.slice(0, 11)}…` : name}
      </text>
      {[UPPER, LOWER].map((y, k) => (
        <g key={y}>
          <circle class="terminal" cx={x} cy={y} r={3.5} />
          <text
            class="small"
            x={x - side * -8}
            y={y + 3.5}
            text-anchor={side < 0 ? 'end' : 'start'}
            dx={side < 0 ? -16 : 0}
          >
            L{k + 1}
          </text>
        </g>
      ))}
    </g>
  )
}

/** The pair between the terminals, and what stands in it or across it. */
function Wires({ kind }: { kind: Supply['kind'] | null }) {
  const [from, to] = [LEFT + 4, RIGHT - 4]
  switch (kind) {
    case null:
      return <path class="wire" d={`M${from} ${UPPER}H${to}M${from} ${LOWER}H${to}`} />
    case 'series':
      return (
        <g>
          <path
            class="wire"
            d={`M${from} ${UPPER}H${from + 24}M${from + 36} ${UPPER}H${to}M${from} ${LOWER}H${to}`}
          />
          <path
            class="cell"
            d={`M${from + 24} ${UPPER - 10}v20M${from + 30} ${UPPER - 5}v10M${from + 36} ${UPPER - 10}v20`}
          />
          <text class="small" x={from + 30} y={UPPER - 14} text-anchor="middle">
            battery
          </text>
        </g>
      )
    case 'feed':
      return (
        <g>
          <path
            class="wire"
            d={`M${from} ${UPPER}H${to}M${from} ${LOWER}H${to}M${from + 30} ${UPPER}v10M${from + 30} ${LOWER}v-10`}
          />
          <rect class="box" x={from + 12} y={UPPER + 8} width={36} height={16} />
          <text class="small" x={from + 30} y={UPPER + 19} text-anchor="middle">
            supply
          </text>
        </g>
      )
    default:
      return (
        <g>
          <path
            class="wire"
            d={`M${from} ${UPPER}H${from + 16}M${from} ${LOWER}H${from + 16}M${from + 68} ${UPPER}H${to}M${from + 68} ${LOWER}H${to}`}
          />
          <rect class="box" x={from + 16} y={UPPER - 14} width={52} height={60} />
          <text class="small" x={from + 42} y={UPPER + 20} text-anchor="middle">
            {kind === 'ringdown' ? 'unit' : kind}
          </text>
        </g>
      )
  }
}

/** What is done at each end, in the order of doing it. */
function stepsOf(supply: Supply | null, near: string, far: string, isDoubled: boolean): readonly string[] {
  const pair = isDoubled
    ? 'Where several lines lie side by side, join their like wires at both ends.'
    : 'Mark one wire of the pair at both ends before it is laid.'
  const atFar = `At ${far}: the marked wire to L1, the other to L2.`
  switch (supply?.kind) {
    case undefined:
      return [
        pair,
        `At ${near}: the marked wire to L1, the other to L2.`,
        atFar,
        'Crank at one end; the other must ring. Then speak both ways.',
      ]
    case 'series':
      return [
        pair,
        `At ${near}: the battery’s plus to L1 of the telephone, and the marked wire to the battery’s minus; the other wire to L2. Of several cells each plus goes to the next one’s minus.`,
        atFar,
        'Lift both handsets, then speak. Where one stays silent, change the two wires at its terminals.',
      ]
    case 'feed':
      return [
        pair,
        `At ${near}: the two line terminals of ${supply.name} to L1 and L2, and the pair to the same two.`,
        atFar,
        'Lift both handsets, then speak.',
      ]
    default:
      return [
        pair,
        `At ${near}: the pair to one line port of ${supply!.name}, and the telephone there to another port.`,
        atFar,
        'Call from either end, then speak.',
      ]
  }
}
