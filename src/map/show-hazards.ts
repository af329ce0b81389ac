import { effect } from '@preact/signals'
import type { HazardId } from '../plan/id'
import type { Hazard } from '../plan/plan'
import type { Bench } from './bench'
import { pathData } from './leg-strokes'
import type { MapView, Point } from './map-view'
import { svgElement } from './svg-element'

interface DrawnHazard {
  readonly group: SVGGElement
  readonly hazard: Hazard
  readonly frame: number
  readonly mark: string
}

/** Draws roads, railways, waters, power lines and ground to keep out of, each in strokes that tell it apart without colour. */
export function showHazards({ store, view, picked }: Bench): () => void {
  const group = view.addGroup('hazards')
  const drawn = new Map<HazardId, DrawnHazard>()

  const stop = effect(() => {
    const { hazards } = store.plan.value
    const frame = view.frame.value
    const selection = store.selection.value
    const hand = picked.value
    for (const [id, { group: old }] of drawn) {
      if (hazards.has(id)) continue
      old.remove()
      drawn.delete(id)
    }
    for (const hazard of hazards.values()) {
      const selected = selection?.kind === 'hazard' && selection.id === hazard.id
      const corner = hand?.kind === 'corner' && hand.hazard === hazard.id ? hand.index : -1
      const mark = `${selected} ${corner}`
      const before = drawn.get(hazard.id)
      if (before?.hazard === hazard && before.frame === frame && before.mark === mark) continue
      const hazardGroup = before?.group ?? svgElement('g', {}, group)
      const area = hazard.geometry.type === 'Polygon'
      hazardGroup.setAttribute(
        'class',
        `hazard hazard-${hazard.hazard}${area ? ' area' : ''}${selected ? ' selected' : ''}`,
      )
      hazardGroup.replaceChildren(...strokesOf(view, hazard, selected, corner))
      drawn.set(hazard.id, { group: hazardGroup, hazard, frame, mark })
    }
  })
  return () => {
    stop()
    group.remove()
  }
}

function strokesOf(view: MapView, hazard: Hazard, selected: boolean, corner: number): SVGElement[] {
  const { geometry } = hazard
  const area = geometry.type === 'Polygon'
  const paths = area ? geometry.coordinates.map(view.pathOf) : [view.pathOf(geometry.coordinates)]
  const d = paths.map((path) => pathData(path) + (area ? 'Z' : '')).join('')
  const outline = paths[0] ?? []
  const corners = selected
    ? outline
        .slice(0, area ? -1 : undefined)
        .map(({ x, y }, i) =>
          svgElement('circle', { class: i === corner ? 'bend picked' : 'bend', cx: x, cy: y, r: 5 }),
        )
    : []
  return [
    ...(selected ? [svgElement('path', { class: 'leg-picked', d })] : []),
    svgElement('path', { class: 'hazard-bed', d }),
    svgElement('path', { class: 'hazard-top', d }),
    ...corners,
    ...(hazard.name ? [nameAt(area ? middleOfArea(outline) : middleOfPath(outline), hazard.name)] : []),
  ]
}

function nameAt({ x, y }: Point, name: string): SVGElement {
  const text = svgElement('text', {
    class: 'hazard-name',
    x: x.toFixed(1),
    y: (y - 9).toFixed(1),
    'text-anchor': 'middle',
  })
  text.textContent = name
  return text
}

function middleOfArea(ring: readonly Point[]): Point {
  const corners = ring.slice(0, -1)
  const count = Math.max(1, corners.length)
  return {
    x: corners.reduce((sum, { x }) => sum + x, 0) / count,
    y: corners.reduce((sum, { y }) => sum + y, 0) / count,
  }
}

function middleOfPath(path: readonly Point[]): Point {
  const middle = (path.length - 1) / 2
  const [a, b] = [path[Math.floor(middle)], path[Math.ceil(middle)]]
  return a && b ? { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 } : { x: 0, y: 0 }
}
