import { BUILT_IN } from '../../catalog/built-in'
import { mergeCatalogs } from '../../catalog/catalog'
import type { Supply } from '../../catalog/supply'
import { type Line, type Plan, stationName } from '../../plan/plan'
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
  const lay = layOf([...plan.lines.values()])
  const steps = stepsOf(supply ?? null, near, far, lay)
  return (
    <OnDemand title="How it is wired, terminal by terminal">
      <svg class="hook-up" viewBox="0 0 360 104" role="img" aria-label={steps.join(' ')}>
        <Telephone x={LEFT} side={-1} name={near} />
        <Telephone x={RIGHT} side={1} name={far} />
        <Wires kind={supply?.kind ?? null} isEarth={lay.isEarth} />
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
        {name.length > 10 ? `${name.slice(0, 9)}…` : name}
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

/** How the lines between two telephones lie. */
function layOf(lines: readonly Line[]) {
  const ends = (line: Line) => [line.from, line.to].toSorted().join(' ')
  const ways = new Set(lines.map(ends))
  return {
    isEarth: lines.some((line) => line.return === 'earth'),
    /** Several lines between the same two places. */
    isDoubled: ways.size < lines.length,
    /** One line goes on where another ends. */
    isJoined: ways.size > 1,
  }
}

/** So far from its terminal an earth rod is drawn. */
const ROD = 26

/** The way back: the other wire of the pair, or a rod at either end, each with its three strokes of earth. */
function wayBack(from: number, to: number, isEarth: boolean): string {
  if (!isEarth) return `M${from} ${LOWER}H${to}`
  const rod = (x: number) =>
    `V${LOWER + 14}M${x - 9} ${LOWER + 14}h18M${x - 6} ${LOWER + 19}h12M${x - 3} ${LOWER + 24}h6`
  return `M${from} ${LOWER}H${from + ROD}${rod(from + ROD)}M${to} ${LOWER}H${to - ROD}${rod(to - ROD)}`
}

/** The pair between the terminals, or one wire and the earth, and what stands in it or across it. */
function Wires({ kind, isEarth }: { kind: Supply['kind'] | null; isEarth: boolean }) {
  const [from, to] = [LEFT + 4, RIGHT - 4]
  const back = wayBack(from, to, isEarth)
  switch (kind) {
    case null:
      return <path class="wire" d={`M${from} ${UPPER}H${to}${back}`} />
    case 'series':
      return (
        <g>
          <path class="wire" d={`M${from} ${UPPER}H${from + 24}M${from + 36} ${UPPER}H${to}${back}`} />
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
            d={`M${from} ${UPPER}H${to}${back}M${from + (isEarth ? ROD : 30)} ${UPPER}v10M${from + (isEarth ? ROD : 30)} ${LOWER}v-10`}
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
            d={`M${from} ${UPPER}H${from + 16}M${from} ${LOWER}H${from + 16}M${from + 68} ${UPPER}H${to}${wayBack(from + 68, to, isEarth)}`}
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
function stepsOf(
  supply: Supply | null,
  near: string,
  far: string,
  { isEarth, isDoubled, isJoined }: ReturnType<typeof layOf>,
): readonly string[] {
  const [wire, back] = isEarth ? ['the wire', 'the earth rod'] : ['the marked wire', 'the other wire']
  const first = [
    isEarth
      ? 'Lay one wire, and drive a rod at either end, where nothing is buried and far from any power earth.'
      : 'Mark one wire of the pair at both ends before it is laid.',
    ...(isDoubled ? ['Where two lines lie side by side, join their like wires at both ends.'] : []),
    ...(isJoined ? ['Where one wire goes on from another, join like to like.'] : []),
  ]
  const atFar = `At ${far}: ${wire} to L1, ${back} to L2.`
  switch (supply?.kind) {
    case undefined:
      return [
        ...first,
        `At ${near}: ${wire} to L1, ${back} to L2.`,
        atFar,
        'Crank at one end; the other must ring. Then speak both ways.',
      ]
    case 'series':
      return [
        ...first,
        `At ${near}: the battery’s plus to L1 of the telephone, and ${wire} to the battery’s minus; ${back} to L2. Of several cells each plus goes to the next one’s minus.`,
        atFar,
        'Lift both handsets, then speak. Where one stays silent, change the two wires at its terminals.',
      ]
    case 'feed':
      return [
        ...first,
        `At ${near}: the two line terminals of ${supply.name} to L1 and L2, and ${wire} and ${back} to the same two.`,
        atFar,
        'Lift both handsets, then speak.',
      ]
    default:
      return [
        ...first,
        `At ${near}: ${wire} and ${back} to one line port of ${supply!.name}, and the telephone there to another port.`,
        atFar,
        'Call from either end, then speak.',
      ]
  }
}
