import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { LineId, StationId } from '../../plan/id'
import type { Plan } from '../../plan/plan'
import type { Way } from '../../plan/route-edits'
import { type RouteFigures, routeFigures } from '../../report/route-figures'
import type { Store } from '../../state/store'
import { underWatch } from '../../storage/under-watch'
import { formatLengthM, formatRunM } from '../../words/units'
import { useSearchSignal } from './search-signal'
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
  readonly way: Way
}

/** Seeks the cheapest way between two stations, shows it beside what is drawn, and lets the person take or leave it. */
export function RouteOffer({ store, from, to, drawn, lead }: Props) {
  const offer = useSignal<Offer | null>(null)
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
  }
  const searchSignal = useSearchSignal([from, to, plan.stations, plan.hazards, plan.lines])
  useEffect(() => leave, [from, to])
  useEffect(() => {
    if (found && !holds) leave()
  }, [holds])

  const seek = async () => {
    if (!groundWorker.value) return
    const sought = store.settled.peek()
    const ends = [sought.stations.get(from)!.position, sought.stations.get(to)!.position] as const
    refusal.value = ''
    const request = {
      ...{ from: ends[0], to: ends[1] },
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
      (watch) => groundWorker.peek()!.suggestRoute(request, { ...watch, about }),
      searchSignal(),
    )
    if (!result) return
    if (!result.ok) {
      refusal.value = result.problems[0]?.message ?? ''
      return
    }
    offer.value = { sought, way: result.value }
    store.suggested.value = [[ends[0], ...result.value.bends, ends[1]]]
  }
  const take = () => {
    if (!found) return
    const led = lead(plan, found.way)
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
          <Comparison store={store} plan={plan} drawn={drawn} led={lead(plan, found.way)} />
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
      <WeightFields store={store} />
    </div>
  )
}

function Comparison({
  store,
  plan,
  drawn,
  led,
}: {
  store: Store
  plan: Plan
  drawn: LineId | undefined
  led: { readonly plan: Plan; readonly line: LineId }
}) {
  const ground = store.ground.value
  const system = store.units.value
  const ways: [string, RouteFigures][] = [
    ...(drawn ? [['Drawn', routeFigures(plan, drawn, ground)] as [string, RouteFigures]] : []),
    ['Suggested', routeFigures(led.plan, led.line, ground)],
  ]
  const rows: readonly (readonly [string, (figures: RouteFigures) => string])[] = [
    ['Along the ground', ({ groundM }) => formatRunM(groundM, system)],
    ['Wire', ({ wireM }) => formatRunM(wireM, system)],
    ['Climb', ({ climbM }) => (climbM === undefined ? 'not known' : formatLengthM(climbM, system))],
    ['Bends', ({ bends }) => String(bends)],
    ['Cautions', ({ cautions }) => String(cautions.length)],
    ['Hours to lay', ({ hours }) => hours.toFixed(1)],
  ]
  return (
    <table class="weighed">
      <thead>
        <tr>
          <td />
          {ways.map(([name]) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, show]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {ways.map(([way, figures]) => (
              <td key={way}>{show(figures)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
