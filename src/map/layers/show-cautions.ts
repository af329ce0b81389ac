import type { Position } from '../../geo/position'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import { isIn } from '../view/line-path'
import type { Point } from '../view/map-view'
import { showWithin, svgElement } from '../view/svg-element'

/** Marks nearer than this to one another are one, px. */
const APART_PX = 12

/** Marks every place that has a caution or a doubt. */
export function showCautions({ store, view, moving }: Bench): () => void {
  const standing = marks(view.addGroup('caution-marks', 'signs', 'stations'))
  const inHand = marks(view.addGroup('caution-marks', 'signs-moving', 'stations'))
  let points = { frame: -1, of: new WeakMap<Position, Point>() }
  /** Hundreds of places are the same as before, at each move of a drag. */
  const pointOf = (position: Position): Point => {
    const before = points.of.get(position)
    if (before) return before
    const point = view.pointOf(position)
    points.of.set(position, point)
    return point
  }
  const stop = effect(() => {
    const frame = view.frame.value
    if (points.frame !== frame) points = { frame, of: new WeakMap() }
    const held = moving.value.lines
    const box = view.drawBox()
    const [still, moved]: [Point[], Point[]] = [[], []]
    const { cautions, doubts } = store.report.value
    const put = (where: string, position: Position | undefined) => {
      const at = position && pointOf(position)
      if (at && isIn(box, at)) ((held as ReadonlySet<string>).has(where) ? moved : still).push(at)
    }
    for (const { place, where } of cautions) put(where, place?.position)
    for (const { position, where } of doubts) put(where, position)
    standing.draw(still)
    inHand.draw(moved)
  })
  return () => {
    stop()
    standing.remove()
    inHand.remove()
  }
}

/** Places are sorted into cells, so many to a row of them: more than any screen has. */
const CELLS_A_ROW = 2 ** 20

/** Of places that lie nearly on each other, the first. */
function apart(places: readonly Point[]): readonly Point[] {
  const cells = new Map<number, Point[]>()
  const isNear = (at: Point) => (other: Point) => Math.hypot(other.x - at.x, other.y - at.y) < APART_PX
  return places.filter((at) => {
    const home = Math.floor(at.y / APART_PX) * CELLS_A_ROW + Math.floor(at.x / APART_PX)
    for (const row of [home - CELLS_A_ROW, home, home + CELLS_A_ROW])
      for (let cell = row - 1; cell <= row + 1; cell++) if (cells.get(cell)?.some(isNear(at))) return false
    const own = cells.get(home)
    if (own) own.push(at)
    else cells.set(home, [at])
    return true
  })
}

/** A group of marks, drawn anew only where they stand at other places. */
function marks(group: SVGGElement) {
  let drawn: readonly Point[] = []
  const draw = (places: readonly Point[]) => {
    if (places.length === drawn.length && places.every((at, i) => at === drawn[i])) return
    drawn = places
    showWithin(group, places.length > 0 ? cautionSigns(apart(places)) : [])
  }
  return { draw, remove: () => group.remove() }
}

/** The signs at all places at once, as two paths: hundreds of them would else be as many thousand elements. */
export function cautionSigns(places: readonly Point[]): readonly SVGElement[] {
  const at = (steps: readonly (readonly [number, string])[]) =>
    places
      .flatMap(({ x, y }) => steps.map(([dy, step]) => `M${x.toFixed(1)} ${(y + dy).toFixed(1)}${step}`))
      .join('')
  return [
    svgElement('path', { class: 'caution-plate', d: at([[-8, 'l7.5 13h-15z']]) }),
    svgElement('path', {
      class: 'caution-bar',
      d: at([
        [-3.5, 'v4'],
        [2.2, 'v1.2'],
      ]),
    }),
  ]
}
