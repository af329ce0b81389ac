import { circuitsAtStation, circuitsOfLine } from '../plan/circuit-topology'
import { moveHazardVertex } from '../plan/hazard-edits'
import type { LineId } from '../plan/id'
import { insertBend, moveBend } from '../plan/leg-edits'
import { lineName, type Plan, type Position } from '../plan/plan'
import { moveStation } from '../plan/station-edits'
import type { Aim, Bench, HandTool, Hold } from './bench'
import { renameSelected } from './rename'
import { sceneOf } from './scene'
import { type Here, whatsHere } from './whats-here'

/** Selects what is clicked, and drags stations, bends, legs and corners. */
export function selectTool(bench: Bench): HandTool {
  const { store, view, picked } = bench
  const here = (aim: Aim): Here => whatsHere(sceneOf(store.plan.peek(), view), aim.point, aim.reachPx)

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
    click: (aim) => pick(here(aim), aim.adding),
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

/** The edit that a drag from here makes, given where the pointer has come to. */
export type Move = (plan: Plan, to: Position) => Plan

export function dragOf(found: Here): Move | null {
  switch (found?.kind) {
    case 'station':
      return (plan, to) => moveStation(plan, found.id, to)
    case 'bend':
      return (plan, to) => moveBend(plan, found.line, found.index, to)
    case 'leg':
      return (plan, to) => insertBend(plan, found.line, found.leg, to)
    case 'corner':
      return (plan, to) => moveHazardVertex(plan, found.hazard, found.index, to)
    default:
      return null
  }
}

/** Where a thing that can be dragged stands, so that it does not jump to the pointer; a leg bends at the pointer. */
function anchorOf(bench: Bench, found: Here, aim: Aim) {
  const { view, store } = bench
  const plan = store.plan.peek()
  if (found?.kind === 'station') return view.pointOf(plan.stations.get(found.id)!.position)
  if (found?.kind === 'bend') return view.pointOf(plan.lines.get(found.line)!.bends[found.index]!)
  return aim.point
}

function dragging(bench: Bench, found: Here, start: Aim, move: Move, begin: () => void): Hold {
  const { store, view } = bench
  const anchor = anchorOf(bench, found, start)
  let begun = false
  return {
    move: ({ point }) => {
      if (!begun) begin()
      begun = true
      const to = { x: anchor.x + point.x - start.point.x, y: anchor.y + point.y - start.point.y }
      store.preview((plan) => move(plan, view.positionOf(to)))
    },
    drop: () => {
      store.settle()
      bench.say('Moved')
    },
    letGo: () => {
      if (begun) store.cancel()
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
