import { circuitsAtStation, circuitsOfLine } from '../../plan/circuit-topology'
import type { LineId } from '../../plan/id'
import { insertBend } from '../../plan/leg-edits'
import type { Aim, Bench, MapTool } from '../bench'
import { describe } from './describe'
import { dragging, dragOf } from './dragging'
import { pick } from './pick'
import { renameSelected } from './rename'
import { sceneOf } from './scene'
import { type Here, whatsHere } from './whats-here'

/** Selects what is clicked, and drags stations, bends, legs and corners. */
export function selectTool(bench: Bench): MapTool {
  const { store, view } = bench
  const here = (aim: Aim): Here => whatsHere(sceneOf(store.plan.peek(), view), aim.point, aim.reachPx)

  const lineUnder = ({ line }: { line: LineId }, aim: Aim): Here => {
    const scene = sceneOf(store.plan.peek(), view)
    const others = scene.lines.filter(({ id }) => id !== line)
    const found = whatsHere({ ...scene, lines: others }, aim.point, aim.reachPx / 2)
    return found?.kind === 'leg' ? found : null
  }

  const take = (found: Here, adding = false) => {
    pick(bench, found, adding)
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
      take(under ?? found, aim.adding)
    },
    doubleClick: (aim) => {
      const found = here(aim)
      if (found?.kind === 'station') {
        take(found)
        renameSelected(bench)
      } else if (found?.kind === 'leg') {
        store.edit((plan) => insertBend(plan, found.line, found.leg, aim.position))
        take({ kind: 'bend', line: found.line, index: found.leg })
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
        if (!isWatched(bench, found)) take(afterDrag(found))
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
