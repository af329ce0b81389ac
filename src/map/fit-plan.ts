import { effect } from '@preact/signals'
import type { Plan, Position } from '../plan/plan'
import type { Store } from '../state/store'
import type { MapView } from './map-view'
import { outlineOf } from './scene'
import { unrolled } from './unroll'

/** Nearest that the map comes by itself, so that a plan of one station is not seen through a lens. */
const NEAREST_ZOOM = 16
const MARGIN_PX = 56

const positionsOf = (plan: Plan): readonly Position[] => [
  ...[...plan.stations.values()].map(({ position }) => position),
  ...[...plan.lines.values()].flatMap(({ bends }) => bends),
  ...[...plan.hazards.values()].flatMap(outlineOf),
]

/** Puts the whole plan on the screen; an empty plan leaves the map where it is. */
export function fitPlan(view: MapView, plan: Plan): void {
  const positions = positionsOf(plan)
  const [first] = positions
  if (!first) return
  const corners = unrolled(positions, first[0]).map(
    ([lonDeg, latDeg]) => [latDeg, lonDeg] as [number, number],
  )
  view.map.fitBounds(corners as [number, number][], {
    paddingTopLeft: [MARGIN_PX, MARGIN_PX * 1.5],
    paddingBottomRight: [MARGIN_PX, MARGIN_PX],
    maxZoom: NEAREST_ZOOM,
    animate: false,
  })
}

/** Shows every plan whole when it is opened. */
export function fitOpenedPlans(view: MapView, store: Store): () => void {
  return effect(() => fitPlan(view, store.opened.value))
}
