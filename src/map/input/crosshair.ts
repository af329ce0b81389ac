import type { Position } from '../../geo/position'
import type { Aim } from '../bench'
import type { MapView, Point } from '../view/map-view'
import { REACH_PX } from './gestures'

/** The keyboard's pointer. It shows only while the keyboard leads; the mouse takes it along unseen. */
export interface Crosshair {
  aim(adding: boolean): Aim
  move(by: Point): void
  goTo(position: Position): void
  /** The mouse leads from here on. */
  follow(aim: Aim): void
  remove(): void
}

/** So near the edge the map is pushed along, px. */
const EDGE_PX = 40

export function showCrosshair(view: MapView): Crosshair {
  const { map, container } = view
  const cross = document.createElement('div')
  cross.className = 'crosshair'
  cross.hidden = true
  cross.setAttribute('aria-hidden', 'true')
  container.append(cross)
  /** In px from the corner of the screen's map; null until a pointer or a key has moved it. */
  let at: Point | null = null

  const middle = (): Point => {
    const { x, y } = map.getSize()
    return { x: x / 2, y: y / 2 }
  }
  const show = (point: Point) => {
    at = point
    cross.hidden = false
    cross.style.transform = `translate(${point.x}px, ${point.y}px)`
  }
  /** Holds a point within the edges, and pans by what is over. */
  const within = ({ x, y }: Point): Point => {
    const size = map.getSize()
    const held = {
      x: Math.min(size.x - EDGE_PX, Math.max(EDGE_PX, x)),
      y: Math.min(size.y - EDGE_PX, Math.max(EDGE_PX, y)),
    }
    if (held.x !== x || held.y !== y) map.panBy([x - held.x, y - held.y], { animate: false })
    return held
  }

  return {
    aim: (adding) => {
      const { x, y } = at ?? middle()
      const point = map.containerPointToLayerPoint([x, y])
      return { point, position: view.positionOf(point), reachPx: REACH_PX.mouse, adding, touch: false }
    },
    move: ({ x, y }) => {
      const from = at ?? middle()
      show(within({ x: from.x + x, y: from.y + y }))
    },
    goTo: (position) => {
      const { x, y } = view.pointOf(position)
      const size = map.getSize()
      const point = map.layerPointToContainerPoint([x, y])
      const seen =
        point.x >= EDGE_PX && point.y >= EDGE_PX && point.x <= size.x - EDGE_PX && point.y <= size.y - EDGE_PX
      if (!seen) {
        map.panBy([point.x - size.x / 2, point.y - size.y / 2], { animate: false })
        show(middle())
      } else show(point)
    },
    follow: ({ point }) => {
      at = map.layerPointToContainerPoint([point.x, point.y])
      if (!cross.hidden) cross.hidden = true
    },
    remove: () => cross.remove(),
  }
}
