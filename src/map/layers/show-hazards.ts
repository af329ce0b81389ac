import { HAZARDS } from '../../hazard/kinds'
import type { HazardId } from '../../plan/id'
import type { Hazard } from '../../plan/plan'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import type { MapView } from '../view/map-view'
import { pathData } from '../view/path-data'
import { showWithin, svgElement } from '../view/svg-element'

interface DrawnHazard {
  readonly group: SVGGElement
  readonly hazard: Hazard
  readonly frame: number
  readonly mark: string
}

/** Draws hazards, each kind in strokes that tell it apart without colour. */
export function showHazards({ store, view, picked }: Bench): () => void {
  const group = view.addGroup('hazards')
  addHatch(group)
  const drawn = new Map<HazardId, DrawnHazard>()

  const stop = effect(() => {
    const { hazards } = store.atHand.value
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
      const { stroke, fill } = HAZARDS[hazard.hazard]
      hazardGroup.setAttribute(
        'class',
        `hazard stroke-${stroke} fill-${fill}${area ? ' area' : ''}${selected ? ' selected' : ''}`,
      )
      showWithin(hazardGroup, strokesOf(view, hazard, selected, corner))
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
  ]
}

/** The filling of areas that are hatched; the style sheet names it. */
function addHatch(parent: SVGElement): void {
  const hatch = svgElement(
    'pattern',
    {
      id: 'hazard-hatch',
      width: 8,
      height: 8,
      patternUnits: 'userSpaceOnUse',
      patternTransform: 'rotate(45)',
    },
    svgElement('defs', {}, parent),
  )
  svgElement('path', { class: 'hazard-hatch-stroke', d: 'M0 0V8' }, hatch)
}
