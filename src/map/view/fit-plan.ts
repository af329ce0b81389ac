import { unrolled } from '../../geo/longitude'
import type { Position } from '../../geo/position'
import type { Plan } from '../../plan/plan'
import { effect } from '../../state/steady-effect'
import type { Store } from '../../state/store'
import { outlineOf } from '../tools/scene'
import type { MapView } from './map-view'

/** Nearest that the map comes by itself, so that a plan of one station is not seen through a lens. */
const NEAREST_ZOOM = 16
/** Room for the frame's figures and for names, as a part of the screen's height and of its width, and at most, px. */
const MARGIN = 0.1
const SIDE_MARGIN = 0.14
const MOST_MARGIN_PX = 70
/** Height of a name above a station, px. */
const NAME_PX = 30
/** Width of the buttons at the right edge, px. */
const BUTTONS_PX = 44

/** What must be seen: the net, and only on a plan without one its hazards, which may run on for miles. */
function positionsOf(plan: Plan): readonly Position[] {
  const net = [
    ...[...plan.stations.values()].map(({ position }) => position),
    ...[...plan.lines.values()].flatMap(({ bends }) => bends),
  ]
  return net.length ? net : [...plan.hazards.values()].flatMap(outlineOf)
}

/** Where the map's foot lies over it, as map/frame/frame.css has it, and how high it is there, px. */
const SMALL_MAP = '(max-width: 50em), (max-height: 30em) and (min-width: 37.5em)'
const FOOT_PX = 52

/** Puts the whole plan on the screen; an empty plan leaves the map where it is. */
export function fitPlan(view: MapView, plan: Plan): void {
  const positions = positionsOf(plan)
  const [first] = positions
  if (!first) return
  const corners = unrolled(positions, first[0]).map(
    ([lonDeg, latDeg]) => [latDeg, lonDeg] as [number, number],
  )
  const { x, y } = view.map.getSize()
  const margin = Math.min(MOST_MARGIN_PX, y * MARGIN)
  const aside = Math.min(MOST_MARGIN_PX, x * SIDE_MARGIN)
  view.map.fitBounds(corners, {
    paddingTopLeft: [aside, margin + Math.min(NAME_PX, y * MARGIN)],
    paddingBottomRight: [aside + BUTTONS_PX, margin + (matchMedia(SMALL_MAP).matches ? FOOT_PX : 0)],
    maxZoom: NEAREST_ZOOM,
    animate: false,
  })
}

/** Shows every plan whole when it is opened. */
export function fitOpenedPlans(view: MapView, store: Store): () => void {
  return effect(() => fitPlan(view, store.opened.value))
}
