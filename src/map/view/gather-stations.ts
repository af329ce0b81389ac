import { computed, type ReadonlySignal } from '@preact/signals'
import type { StationId } from '../../plan/id'
import type { Store } from '../../state/store'
import { isIn } from './line-path'
import type { MapView, Point } from './map-view'
import type { Moving } from './moving'

/** A station on the map, or several that would lie on each other. */
export interface Gathered {
  readonly at: Point
  readonly stations: readonly [StationId, ...StationId[]]
}

/** Two symbols nearer than this lie on each other, px. */
const APART_PX = { x: 20, y: 14 }
/** Where several are gathered already they take in what comes nearer than this, so that counts do not crowd each other. */
const COUNT_APART_PX = { x: 40, y: 28 }

/** Brings stations that would lie on each other together, in their order: each joins the first that it would lie on. */
export function gatherStations(
  stations: Iterable<{ readonly id: StationId; readonly at: Point }>,
): Gathered[] {
  const gathered: { at: Point; stations: [StationId, ...StationId[]] }[] = []
  const cells = new Map<string, typeof gathered>()
  const cellOf = ({ x, y }: Point) =>
    [Math.floor(x / COUNT_APART_PX.x), Math.floor(y / COUNT_APART_PX.y)] as const
  for (const { id, at } of stations) {
    const [column, row] = cellOf(at)
    const near = [-1, 0, 1].flatMap((dx) =>
      [-1, 0, 1].flatMap((dy) => cells.get(`${column + dx} ${row + dy}`) ?? []),
    )
    const other = near.find((each) => {
      const apart = each.stations.length > 1 ? COUNT_APART_PX : APART_PX
      return Math.abs(each.at.x - at.x) < apart.x && Math.abs(each.at.y - at.y) < apart.y
    })
    if (other) {
      other.stations.push(id)
      continue
    }
    const alone: (typeof gathered)[number] = { at, stations: [id] }
    gathered.push(alone)
    const cell = cells.get(`${column} ${row}`)
    if (cell) cell.push(alone)
    else cells.set(`${column} ${row}`, [alone])
  }
  return gathered
}

/** The stations that stand, in view and gathered; what the hand has hold of is never gathered. */
export const gatheredStations = (
  store: Store,
  view: MapView,
  moving: ReadonlySignal<Moving>,
): ReadonlySignal<readonly Gathered[]> =>
  computed(() => {
    view.frame.value
    const box = view.drawBox()
    const held = moving.value.stations
    const standing = [...store.settled.value.stations.values()]
      .filter(({ id }) => !held.has(id))
      .map(({ id, position }) => ({ id, at: view.pointOf(position) }))
    return gatherStations(standing.filter(({ at }) => isIn(box, at)))
  })

/** The count under a point, where several stations are gathered. */
export const countHere = (gathered: readonly Gathered[], point: Point): Gathered | undefined =>
  gathered.find(
    ({ at, stations }) =>
      stations.length > 1 && Math.abs(at.x - point.x) <= 17 && Math.abs(at.y - point.y) <= 12,
  )
