import { HAZARDS } from '../../hazard/kinds'
import { HAZARD_KINDS } from '../../plan/hazard-schema'
import { DEFAULT_ROUTE_WEIGHTS, type RouteWeights } from '../../route/route-weights'
import type { Store } from '../../state/store'
import { NumberField } from '../number-field'
import { OnDemand } from '../question'

const TOLL = { quantity: 'lengthM', limit: { min: 0, max: 100_000 } } as const
const CLIMB = { quantity: 'ratio', limit: { min: 0, max: 1000 } } as const
/** A pace of nothing would lead a route anywhere. */
const PACE = { quantity: 'ratio', limit: { min: 0.1, max: 1000 } } as const
const PRICES = [
  ['toll', TOLL],
  ['inside', PACE],
  ['near', PACE],
] as const

/** What a suggested route pays for, in lengths of easy ground: stated, and to be changed. */
export function WeightFields({ store }: { store: Store }) {
  const weights = store.routeWeights.value
  const field = (
    label: string,
    asked: typeof TOLL | typeof CLIMB | typeof PACE,
    value: number,
    change: (next: number) => Partial<RouteWeights>,
  ) => (
    <NumberField
      key={label}
      label={label}
      system={store.units.value}
      {...asked}
      value={value}
      onCommit={(next) => {
        store.routeWeights.value = { ...weights, ...change(next) }
        return []
      }}
    />
  )
  return (
    <OnDemand title="What a suggested way avoids, and how much">
      <p class="soft">
        Easy ground costs its own length. A crossing costs as much as so much easy ground, and hard ground so
        many times its length; climb counts besides. Keep-out areas are never entered. Climb: Naismith (1892),
        halved. Crossings: the time they take (Popular Science Monthly 90, 1917, p. 820). The rest: common
        practice.
      </p>
      {field('Up or down, times', CLIMB, weights.climb, (climb) => ({ climb }))}
      {PRICES.flatMap(([price, asked]) =>
        HAZARD_KINDS.flatMap((kind) => {
          const rule = HAZARDS[kind].route[price]
          if (!rule) return []
          return field(rule.asks, asked, weights[price][kind] ?? rule.usual, (value) => ({
            [price]: { ...weights[price], [kind]: value },
          }))
        }),
      )}
      <button
        type="button"
        onClick={() => {
          store.routeWeights.value = DEFAULT_ROUTE_WEIGHTS
        }}
      >
        Back to the usual figures
      </button>
    </OnDemand>
  )
}
