import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { CircuitId, LineId, StationId } from '../../plan/id'
import { EMPTY_PLAN, type Plan, stationName } from '../../plan/plan'
import { putBoard } from '../../plan/put-board'
import { replaceNet } from '../../plan/replace-net'
import type { NetLine } from '../../plan/route-edits'
import { netFigures } from '../../report/net-figures'
import { APART_M } from '../../route/apart'
import type { SuggestedNet } from '../../route/suggest-nets'
import { NOTHING_BESIDE } from '../../state/ground-state'
import { newCircuitId, newLineId } from '../../state/new-id'
import type { Store } from '../../state/store'
import { equipmentUsedLast, wireUsedLast } from '../../state/used-last'
import { underWatch } from '../../storage/under-watch'
import { NumberField } from '../number-field'
import { OnDemand } from '../question'
import { Tick } from '../tick'
import { SHAPE_WORDS, type Shape, type ShapeName, Shapes } from './net-shapes'
import { RingApart } from './ring-apart'
import { useSearchSignal } from './search-signal'
import { WeightFields } from './weight-fields'

const APART_LIMIT_M = { min: 5, max: 2000 }

interface Props {
  readonly store: Store
  /** Joined unless the person chooses others. */
  readonly stations: readonly StationId[]
  /** The circuit that the net is for; undefined for a new one. */
  readonly circuit?: CircuitId
}

/** Joins stations in three ways, each with its wire and its verdict, so that the planner chooses with open eyes. */
export function NetOffer({ store, stations, circuit }: Props) {
  const others = useSignal<readonly StationId[] | null>(null)
  const found = useSignal<{ readonly sought: Plan; readonly shapes: readonly Shape[] } | null>(null)
  const shown = useSignal<ShapeName>('tree')
  const refusal = useSignal('')
  const apartM = useSignal(APART_M)
  const plan = store.settled.value
  const chosen = (others.value ?? stations).filter((id) => plan.stations.has(id))
  const choose = (next: readonly StationId[]) => {
    others.value = next
    leave()
  }
  const holds = found.value?.sought === plan
  const leave = () => {
    found.value = null
    store.suggested.value = []
    store.besideSuggested.value = NOTHING_BESIDE
  }
  const searchSignal = useSearchSignal([circuit, plan, others.value])
  useEffect(() => leave, [circuit])
  useEffect(() => {
    if (found.value && !holds) leave()
  }, [holds])

  const show = (shape: Shape | undefined) => {
    if (!shape) return
    shown.value = shape.shape
    store.suggested.value = shape.ways
    store.besideSuggested.value = { ...NOTHING_BESIDE, close: (shape.apart?.close ?? []).map(({ at }) => at) }
  }
  const seek = async () => {
    const sought = store.settled.peek()
    const supplied = circuit && sought.circuits.get(circuit)?.supply?.at
    refusal.value = ''
    const request = {
      stations: chosen.map((id) => {
        const { name, position } = sought.stations.get(id)!
        return { id, name, position }
      }),
      ...(supplied && chosen.includes(supplied) && { hub: supplied }),
      hazards: [...sought.hazards.values()],
      weights: store.routeWeights.peek(),
      apartM: apartM.peek(),
    }
    const result = await underWatch(
      store.work,
      'Seeking nets',
      (watch) =>
        store.groundWorker.peek()!.suggestNets(request, { ...watch, about: () => [store.settled.peek()] }),
      searchSignal(),
    )
    if (!result) return
    if (!result.ok) {
      refusal.value = result.problems[0]?.message ?? ''
      return
    }
    const shapes = result.value.flatMap((net) => {
      const shape = shapeOf(store, sought, net, circuit)
      return [shape, ...(net.shape === 'star' ? boardOf(store, shape, net) : [])]
    })
    found.value = { sought, shapes }
    show(shapes[0])
  }
  const take = () => {
    const shape = found.value?.shapes.find((each) => each.shape === shown.value)
    if (!shape) return
    leave()
    store.edit(() => shape.plan)
    store.selection.value = { kind: 'circuit', id: shape.circuit }
  }

  if (!store.groundWorker.value) return null
  return (
    <>
      {refusal.value && (
        <p class="fails" role="alert">
          {refusal.value}
        </p>
      )}
      {found.value && holds ? (
        <>
          <RingApart store={store} shape={found.value.shapes.find((each) => each.shape === shown.value)} />
          <Shapes store={store} shapes={found.value.shapes} shown={shown.value} onShow={show} />
          <div class="acts">
            <button type="button" onClick={take}>
              Draw the{' '}
              {shown.value === 'board' ? 'star with a board' : SHAPE_WORDS[shown.value].toLowerCase()}
            </button>
            <button type="button" onClick={leave}>
              Leave them
            </button>
          </div>
        </>
      ) : (
        <div class="acts">
          <button type="button" disabled={chosen.length < 2} onClick={() => void seek()}>
            Suggest nets for {chosen.length} stations
          </button>
        </div>
      )}
      <OnDemand title="Which stations">
        <StationTicks plan={plan} chosen={chosen} onChoose={choose} />
      </OnDemand>
      <OnDemand title="How far apart a ring’s ways keep">
        <NumberField
          label="At least"
          quantity="lengthM"
          system={store.units.value}
          value={apartM.value}
          limit={APART_LIMIT_M}
          onCommit={(m) => {
            apartM.value = m
            leave()
            return []
          }}
        />
        <p class="soft">What breaks one way of the ring should not reach the other.</p>
      </OnDemand>
      <WeightFields store={store} />
    </>
  )
}

interface TicksProps {
  readonly plan: Plan
  readonly chosen: readonly StationId[]
  readonly onChoose: (chosen: readonly StationId[]) => void
}

/** A part of its own, so that it is made when it is shown: a large plan has thousands. */
function StationTicks({ plan, chosen, onChoose }: TicksProps) {
  const ticked = new Set(chosen)
  return [...plan.stations.keys()].map((id) => (
    <Tick
      key={id}
      checked={ticked.has(id)}
      onChange={(isTicked) => onChoose(isTicked ? [...chosen, id] : chosen.filter((each) => each !== id))}
    >
      {stationName(plan, id)}
    </Tick>
  ))
}

function shapeOf(store: Store, plan: Plan, net: SuggestedNet, replaced: CircuitId | undefined): Shape {
  const taken = new Set<LineId>()
  const lines: NetLine[] = net.links.map((link) => {
    let id = newLineId(plan)
    while (taken.has(id)) id = newLineId(plan)
    taken.add(id)
    return { id, ...link }
  })
  const before = replaced && plan.circuits.get(replaced)
  const wire = (before && plan.lines.get(before.lines[0]!)?.wire) ?? wireUsedLast(store, plan)
  const circuit = before ?? { id: newCircuitId(plan), name: `New net, ${net.shape}` }
  const drawn = replaceNet(plan, lines, wire, circuit)
  const at = (id: StationId) => plan.stations.get(id)!.position
  return {
    shape: net.shape,
    apart: net.apart,
    plan: drawn,
    circuit: circuit.id,
    ways: net.links.map(({ from, to, bends }) => [at(from), ...bends, at(to)]),
    figures: netFigures(
      drawn,
      lines.map(({ id }) => id),
      circuit.id,
      store.ground.peek(),
    ),
  }
}

/** The star with a board in its middle; none where two lines are too few for one, or no board has room for all. */
function boardOf(store: Store, star: Shape, { links }: SuggestedNet): readonly Shape[] {
  const [first, second] = links
  if (!first || !second) return []
  const middle = [second.from, second.to].includes(first.from) ? first.from : first.to
  const plan = putBoard(star.plan, star.circuit, middle, cranked(store, star.plan))
  if (!plan) return []
  const { lines } = plan.circuits.get(star.circuit)!
  const figures = netFigures(plan, lines, star.circuit, store.ground.peek())
  return [{ ...star, shape: 'board', plan, figures }]
}

/** A telephone that calls a board by its own crank: that which was used last, if it does. */
function cranked(store: Store, plan: Plan): string {
  const used = store.catalog.peek().sets.get(equipmentUsedLast(store, plan).set)
  return used && used.talk !== 'common' && used.generator ? used.id : equipmentUsedLast(store, EMPTY_PLAN).set
}
