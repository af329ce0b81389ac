import { type GridLine, gridLines } from '../../figure/map-grid-lines'
import { effect } from '../../state/steady-effect'
import type { MapView, Point } from '../view/map-view'
import { pathData } from '../view/path-data'
import { svgElement } from '../view/svg-element'

/** Draws the metric grid, or on small scales meridians and parallels, with their figures along the frame. */
export function showGrid(view: MapView): () => void {
  const group = view.addGroup('grid', 'wire', 'hazards')
  const labels = document.createElement('div')
  labels.className = 'grid-labels'
  labels.setAttribute('aria-hidden', 'true')
  view.container.append(labels)

  let drawn: { line: GridLine; points: readonly Point[]; label: HTMLElement }[] = []

  const draw = () => {
    const box = view.drawBox()
    const { map } = view
    const corner = ({ x, y }: Point) => map.layerPointToLatLng([x, y])
    const northWest = corner(box.min)
    const southEast = corner(box.max)
    const lines = gridLines(
      { west: northWest.lng, south: southEast.lat, east: southEast.lng, north: northWest.lat },
      view.metresPerPx(),
    )
    group.replaceChildren()
    drawn = lines.map((line) => {
      const points = line.points.map(([lonDeg, latDeg]) => view.pointOfUnrolled(lonDeg, latDeg))
      svgElement('path', { d: pathData(points) }, group)
      return { line, points, label: labelOf(line) }
    })
    labels.replaceChildren(...drawn.map(({ label }) => label))
    placeLabels()
  }

  /** Figures keep to the frame while the lines move under it. */
  const placeLabels = () => {
    const size = view.map.getSize()
    for (const { line, points, label } of drawn) {
      const shown = points.map(({ x, y }) => view.map.layerPointToContainerPoint([x, y]))
      const at = line.across === 'east' ? crossing(shown, 'y', size.y) : crossing(shown, 'x', 0)
      const along = line.across === 'east' ? at?.x : at?.y
      const inside =
        along !== undefined && along > 34 && along < (line.across === 'east' ? size.x - 30 : size.y - 34)
      label.hidden = !inside
      if (inside) label.style.transform = `translate(${at!.x}px, ${at!.y}px)`
    }
  }

  view.map.on('move', placeLabels)
  const stop = effect(() => {
    view.frame.value
    draw()
  })
  return () => {
    stop()
    view.map.off('move', placeLabels)
    labels.remove()
    group.remove()
  }
}

function labelOf({ across, label }: GridLine): HTMLElement {
  const element = document.createElement('span')
  element.className = `grid-label grid-label-${across}`
  if (label.prefix) {
    const prefix = document.createElement('small')
    prefix.textContent = label.prefix
    element.append(prefix)
  }
  element.append(label.main)
  return element
}

/** Where a line crosses the edge at which one coordinate has a value. */
function crossing(points: readonly Point[], axis: 'x' | 'y', value: number): Point | undefined {
  for (const [i, to] of points.entries()) {
    const from = points[i - 1]
    if (!from || (from[axis] - value) * (to[axis] - value) > 0 || from[axis] === to[axis]) continue
    const t = (value - from[axis]) / (to[axis] - from[axis])
    return { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t }
  }
  return undefined
}
