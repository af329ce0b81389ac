import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Position } from '../../geo/position'
import type { LineId, StationId } from '../../plan/id'
import { type Plan, stationName } from '../../plan/plan'
import type { Way } from '../../plan/route-edits'
import { routeFigures } from '../../report/route-figures'
import type { NearRoutes } from '../../route/near-routes'
import { NOTHING_BESIDE, type Suggested } from '../../state/ground-state'
import type { Store } from '../../state/store'
import { underWatch } from '../../storage/under-watch'
import { formatLengthM } from '../../words/units'
import { waySentence } from '../../words/way-words'
import { SelectField } from '../select-field'
import { useSearchSignal } from './search-signal'
import { WayTable } from './way-table'
import { WeightFields } from './weight-fields'

interface Props {
  readonly store: Store
  readonly from: StationId
  readonly to: StationId
  /** The line that goes there by hand; undefined where none does yet. */
  readonly drawn?: LineId | undefined
  /** The plan with the line drawn this way, and which line it is. */
  readonly lead: (plan: Plan, way: Way) => { readonly plan: Plan; readonly line: LineId }
}

/** What was found, for the plan that it was sought in. */
interface Offer {
  readonly sought: Pick<Plan, 'stations' | 'hazards' | 'lines'>
  readonly ends: readonly [Position, Position]
  readonly near: NearRoutes
}

/** How much dearer than the best a way may be, %: the choice, and what is taken at first. */
const SHARES = ['5', '10', '20', '40'] as const
type Share = (typeof SHARES)[number]
const USUAL_SHARE: Share = '10'

/** Seeks the cheapest way between two stations and others that are little dearer, shows them beside what is drawn, and lets the person take one. */
export function RouteOffer({ store, from, to, drawn, lead }: Props) {
  const offer = useSignal<Offer | null>(null)
  const shown = useSignal(0)
  const share = useSignal<Share>(USUAL_SHARE)
  const refusal = useSignal('')
  const plan = store.settled.value
  const { groundWorker } = store
  const found = offer.value
  const holds =
    found?.sought.stations === plan.stations &&
    found.sought.hazards === plan.hazards &&
    found.sought.lines === plan.lines
  const leave = () => {
    offer.value = null
    store.suggested.value = []
    store.besideSuggested.value = NOTHING_BESIDE
  }
  const searchSignal = useSearchSignal([from, to, plan.stations, plan.hazards, plan.lines])
  useEffect(() => leave, [from, to])
  useEffect(() => {
    if (found && !holds) leave()
  }, [holds])

  const show = ({ ends, near }: Offer, index: number) => {
    const ways = near.routes.map(({ bends }) => [ends[0], ...bends, ends[1]])
    shown.value = index
    store.suggested.value = ways.slice(index, index + 1)
    store.besideSuggested.value = {
      ...NOTHING_BESIDE,
      ways: ways.filter((_, i) => i !== index),
      corridor: near.corridor,
      told: toldOf(store, { from, to, lead, near, all: ways, share: share.peek() }),
    }
  }
  const seek = async () => {
    if (!groundWorker.value) return
    const sought = store.settled.peek()
    const ends = [sought.stations.get(from)!.position, sought.stations.get(to)!.position] as const
    refusal.value = ''
    const request = {
      ...{ from: ends[0], to: ends[1], sharePct: Number(share.peek()) },
      hazards: [...sought.hazards.values()],
      weights: store.routeWeights.peek(),
    }
    const about = () => {
      const { stations, hazards, lines } = store.settled.peek()
      return [stations, hazards, lines]
    }
    const result = await underWatch(
      store.work,
      'Seeking a route',
      (watch) => groundWorker.peek()!.nearRoutes(request, { ...watch, about }),
      searchSignal(),
    )
    if (!result) return
    if (!result.ok) {
      refusal.value = result.problems[0]?.message ?? ''
      return
    }
    offer.value = { sought, ends, near: result.value }
    show(offer.value, 0)
  }
  const take = () => {
    const way = found?.near.routes[shown.value]
    if (!way) return
    const led = lead(plan, way)
    leave()
    store.edit(() => led.plan)
    store.selection.value = { kind: 'line', id: led.line, legs: [] }
  }

  if (!groundWorker.value) return null
  return (
    <div class="route-offer">
      {refusal.value && (
        <p class="fails" role="alert">
          {refusal.value}
        </p>
      )}
      {found && holds ? (
        <>
          <WayTable
            {...{ store, plan, drawn, lead }}
            ways={found.near.routes}
            shown={shown.value}
            onShow={(index) => show(found, index)}
          />
          <Others store={store} near={found.near} share={share.value} />
          {!store.ground.value && (
            <p class="soft">
              No heights are known here: the route takes crossings and areas into account, but not hills.
            </p>
          )}
          <div class="acts">
            <button type="button" onClick={take}>
              {drawn ? 'Route the line this way' : 'Draw the line this way'}
            </button>
            <button type="button" onClick={leave}>
              Leave it
            </button>
          </div>
        </>
      ) : (
        <div class="acts">
          <button type="button" onClick={() => void seek()}>
            Suggest a route
          </button>
        </div>
      )}
      <SelectField
        label="Others, dearer by at most"
        value={share.value}
        options={SHARES.map((each) => ({ value: each, text: `${each} %` }))}
        onCommit={(next) => {
          share.value = next
          if (offer.peek()) void seek()
        }}
      />
      <WeightFields store={store} />
    </div>
  )
}

/** What paper says of the ways. */
function toldOf(
  store: Store,
  {
    from,
    to,
    lead,
    near,
    all,
    share,
  }: Pick<Props, 'from' | 'to' | 'lead'> & { near: NearRoutes; all: Suggested; share: Share },
) {
  const plan = store.settled.peek()
  const say = store.tongue.peek()
  const best = near.routes[0]!.cost
  return {
    title: `${stationName(plan, from)} – ${stationName(plan, to)}`,
    all,
    sentences: [
      `The ground inside the dashed outline holds every way that is at most ${share} % dearer than the best.`,
      ...near.routes.map((way, k) => {
        const led = lead(plan, way)
        const figures = routeFigures(led.plan, led.line, store.ground.peek())
        return waySentence(k, figures, way.cost / best - 1, say)
      }),
    ],
  }
}

/** What the ground that is shaded stands for, and how far other ways truly differ. */
function Others({ store, near, share }: { store: Store; near: NearRoutes; share: Share }) {
  const apart = formatLengthM(near.apartM, store.units.value)
  const others = near.routes.length - 1
  return (
    <p class="soft">
      The ground that is shaded holds every way that is at most {share} % dearer.{' '}
      {others === 0
        ? `None of them lies ${apart} or more from this one for half of its length.`
        : `Each of these lies ${apart} or more from every other for half of its length at least.`}
    </p>
  )
}
