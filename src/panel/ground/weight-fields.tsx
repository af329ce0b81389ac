import { DEFAULT_ROUTE_WEIGHTS, type RouteWeights } from '../../route/route-weights'
import type { Store } from '../../state/store'
import { NumberField } from '../number-field'
import { OnDemand } from '../question'

const TOLLS: readonly (readonly [keyof RouteWeights, string])[] = [
  ['roadToll', 'Crossing a road'],
  ['trackToll', 'Crossing a track'],
  ['railwayToll', 'Crossing a railway'],
  ['waterToll', 'Crossing a stream'],
  ['powerToll', 'Crossing a power line'],
]
const FACTORS: readonly (readonly [keyof RouteWeights, string])[] = [
  ['climb', 'A metre up or down, in metres'],
  ['waterPace', 'A metre through water, times'],
  ['powerPace', 'A metre by a power line, times'],
  ['besideTrackPace', 'A metre beside a track, times'],
]
const TOLL_LIMIT = { min: 0, max: 100_000 }
const FACTOR_LIMIT = { min: 0, max: 1000 }
/** A pace of nothing would lead a route anywhere. */
const PACE_LIMIT = { min: 0.1, max: 1000 }

/** What a suggested route pays for, in metres of easy ground: stated, and to be changed. */
export function WeightFields({ store }: { store: Store }) {
  const weights = store.routeWeights.value
  const field = (name: keyof RouteWeights, label: string, isToll: boolean) => (
    <NumberField
      key={name}
      label={label}
      quantity={isToll ? 'lengthM' : 'ratio'}
      system={store.units.value}
      value={weights[name]}
      limit={isToll ? TOLL_LIMIT : name === 'climb' ? FACTOR_LIMIT : PACE_LIMIT}
      onCommit={(value) => {
        store.routeWeights.value = { ...weights, [name]: value }
        return []
      }}
    />
  )
  return (
    <OnDemand title="What a route pays for">
      <p class="soft">
        Every metre costs a metre; these cost as much as so many metres of easy ground. Keep-out areas are
        never entered. Climb: Naismith (1892), halved. Crossings: the time they take (Popular Science Monthly
        90, 1917, p. 820). The rest: common practice.
      </p>
      {TOLLS.map(([name, label]) => field(name, label, true))}
      {FACTORS.map(([name, label]) => field(name, label, false))}
      <button
        type="button"
        onClick={() => {
          store.routeWeights.value = DEFAULT_ROUTE_WEIGHTS
        }}
      >
        As they were
      </button>
    </OnDemand>
  )
}
