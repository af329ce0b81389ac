import { circuitsAtStation, circuitsOfLine } from '../../plan/circuit-topology'
import type { LineId } from '../../plan/id'
import { insertBend } from '../../plan/leg-edits'
import { lineName, type Plan } from '../../plan/plan'
import type { Aim, Bench, HandTool } from '../bench'
import { dragging, dragOf } from './dragging'
import { renameSelected } from './rename'
import { sceneOf } from './scene'
import { type Here, whatsHere } from './whats-here'

/** Selects what is clicked, and drags stations, bends, legs and corners. */
export function selectTool(bench: Bench): HandTool {
  const { store, view, picked } = bench
  const here = (aim: Aim): Here => whatsHere(sceneOf(store.plan.peek(), view), aim.point, aim.reachPx)

  const lineUnder = ({ line }: { line: LineId }, aim: Aim): Here => {
    const scene = sceneOf(store.plan.peek(), view)
    const others = scene.lines.filter(({ id }) => id !== line)
    const found = whatsHere({ ...scene, lines: others }, aim.point, aim.reachPx / 2)
    return found?.kind === 'leg' ? found : null
  }

  const pick = (found: Here, adding: boolean) => {
    picked.value = found?.kind === 'bend' || found?.kind === 'corner' ? found : null
    store.selection.value = selectionOf(found, adding ? store.selection.peek() : null)
    const sentence = describe(store.plan.peek(), found)
    if (sentence) bench.say(sentence)
  }

  return {
    hint: () => 'Click to select; drag a station, a bend or the middle of a leg',
    hover: (aim) => {
      view.container.dataset.over = here(aim)?.kind ?? ''
    },
    click: (aim) => {
      const found = here(aim)
      // Of lines that lie on one another, a second click takes the next.
      const under =
        found?.kind === 'leg' && !aim.adding && isSelected(bench, found.line) ? lineUnder(found, aim) : null
      pick(under ?? found, aim.adding)
    },
    doubleClick: (aim) => {
      const found = here(aim)
      if (found?.kind === 'station') {
        pick(found, false)
        renameSelected(bench)
      } else if (found?.kind === 'leg') {
        store.edit((plan) => insertBend(plan, found.line, found.leg, aim.position))
        pick({ kind: 'bend', line: found.line, index: found.leg }, false)
      } else if (!found) {
        view.map.setZoomAround(
          view.map.layerPointToLatLng([aim.point.x, aim.point.y]),
          view.map.getZoom() + 1,
        )
      }
    },
    hold: (aim) => {
      const found = here(aim)
      const move = dragOf(found)
      if (!found || !move) return null
      // A finger that pans the map over a wire must not bend it.
      if (aim.touch && found.kind === 'leg' && !isSelected(bench, found.line)) return null
      return dragging(bench, found, aim, move, () => {
        if (!isWatched(bench, found)) pick(afterDrag(found), false)
      })
    },
  }
}

const afterDrag = (found: Here): Here =>
  found?.kind === 'leg' ? { kind: 'bend', line: found.line, index: found.leg } : found

/** A circuit on the panel stays there while a hand drags what belongs to it: its figures are what the hand steers by. */
function isWatched({ store }: Bench, found: Here): boolean {
  const selection = store.selection.peek()
  if (selection?.kind !== 'circuit') return false
  const plan = store.plan.peek()
  const circuits =
    found?.kind === 'station'
      ? circuitsAtStation(plan, found.id)
      : found?.kind === 'bend' || found?.kind === 'leg'
        ? circuitsOfLine(plan, found.line)
        : []
  return circuits.some(({ id }) => id === selection.id)
}

const isSelected = ({ store }: Bench, line: LineId): boolean => {
  const selection = store.selection.peek()
  return selection?.kind === 'line' && selection.id === line
}

type Selected = Bench['store']['selection']['value']

/** What a click selects. A click that adds picks legs of the same line together, and picks one again to let it go. */
export function selectionOf(found: Here, before: Selected): Selected {
  switch (found?.kind) {
    case 'station':
      return { kind: 'station', id: found.id }
    case 'bend':
      return { kind: 'line', id: found.line, legs: [] }
    case 'leg': {
      if (before?.kind !== 'line' || before.id !== found.line)
        return { kind: 'line', id: found.line, legs: [found.leg] }
      const legs = before.legs.includes(found.leg)
        ? before.legs.filter((leg) => leg !== found.leg)
        : [...before.legs, found.leg].sort((a, b) => a - b)
      return { kind: 'line', id: found.line, legs }
    }
    case 'corner':
      return { kind: 'hazard', id: found.hazard }
    case 'hazard':
      return { kind: 'hazard', id: found.id }
    default:
      return before
  }
}

/** A thing on the map in a few words, for those who hear it. */
export function describe(plan: Plan, found: Here): string {
  switch (found?.kind) {
    case 'station':
      return `Station ${plan.stations.get(found.id)?.name ?? ''}`
    case 'bend':
      return `Bend ${found.index + 1} of line ${lineWords(plan, found.line)}`
    case 'leg':
      return `Leg ${found.leg + 1} of line ${lineWords(plan, found.line)}, ${plan.lines.get(found.line)?.legs[found.leg]?.lay ?? ''}`
    case 'corner':
      return `Corner ${found.index + 1} of a hazard`
    case 'hazard':
      return `Hazard ${plan.hazards.get(found.id)?.name || (plan.hazards.get(found.id)?.hazard ?? '')}`
    default:
      return ''
  }
}

function lineWords(plan: Plan, id: LineId): string {
  const line = plan.lines.get(id)
  return line ? lineName(plan, line) : ''
}
