import * as L from 'leaflet'
import { unrolled } from '../../geo/longitude'
import { circuitsAtStation, circuitsOfLine } from '../../plan/circuit-topology'
import type { LineId } from '../../plan/id'
import { insertBend } from '../../plan/leg-edits'
import type { Several } from '../../plan/several-edits'
import type { Aim, Bench, MapTool } from '../bench'
import { countHere, type Gathered } from '../view/gather-stations'
import { describe } from './describe'
import { dragging, dragOf, moveOfSeveral, placeOf } from './dragging'
import { pick } from './pick'
import { renameSelected } from './rename'
import { sceneOf } from './scene'
import { selectBox } from './select-box'
import { selectedHint, selectedSteps } from './selected-steps'
import { type Here, whatsHere } from './whats-here'

/** How far one click on a count may bring the map nearer. */
const MOST_STEPS = 3

/** Selects what is clicked, and drags stations, bends, legs and corners. */
export function selectTool(bench: Bench): MapTool {
  const { store, view } = bench
  const here = (aim: Aim): Here => whatsHere(sceneOf(store.plan.peek(), bench), aim.point, aim.reachPx)

  const lineUnder = ({ line }: { line: LineId }, aim: Aim): Here => {
    const scene = sceneOf(store.plan.peek(), bench)
    const others = scene.lines.filter(({ id }) => id !== line)
    const found = whatsHere({ ...scene, lines: others }, aim.point, aim.reachPx / 2)
    return found?.kind === 'leg' ? found : null
  }

  /** A count under the aim; what the hand has hold of stands before it. */
  const countUnder = (aim: Aim): Gathered | undefined => {
    const found = here(aim)
    const isHeld = found?.kind === 'station' && bench.moving.peek().stations.has(found.id)
    return isHeld ? undefined : countHere(bench.gathered.peek(), aim.point)
  }

  /** Comes nearer to stations that are gathered, until they fall apart; false where they stand on one spot. */
  const comeNearer = ({ stations, at }: Gathered): boolean => {
    const corners = stations.map((id) => store.settled.peek().stations.get(id)!.position)
    const bounds = L.latLngBounds(
      unrolled(corners, corners[0]![0]).map(([lonDeg, latDeg]): L.LatLngTuple => [latDeg, lonDeg]),
    )
    const zoom = Math.min(view.map.getBoundsZoom(bounds.pad(0.3)), view.map.getZoom() + MOST_STEPS)
    if (zoom <= view.map.getZoom() || bounds.getNorthEast().equals(bounds.getSouthWest(), 1e-7)) return false
    view.map.setZoomAround(view.map.layerPointToLatLng([at.x, at.y]), zoom)
    bench.say(`${stations.length} stations lay here: the map has come nearer`)
    return true
  }

  const take = (found: Here, adding = false) => {
    pick(bench, found, adding)
    const sentence = describe(store.plan.peek(), found)
    if (sentence) bench.say(sentence)
  }

  return {
    hint: () => selectedHint(bench),
    steps: () => selectedSteps(bench),
    hover: (aim) => {
      const count = countUnder(aim)
      view.container.dataset.over = count ? 'station' : (here(aim)?.kind ?? '')
    },
    click: (aim) => {
      const count = countUnder(aim)
      if (count && comeNearer(count)) return
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
      } else if (found?.kind === 'leg' && !store.locked.peek()) {
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
      if (store.locked.peek()) return null
      // Of stations that lie on each other no hand can mean one.
      if (countUnder(aim)) return null
      const found = here(aim)
      const several = heldSeveral(bench, found)
      if (found && several) {
        const anchor = placeOf(store.settled.peek(), found) ?? aim.position
        return dragging(bench, found, aim, moveOfSeveral(bench, several, anchor), () => undefined)
      }
      if (aim.adding) return selectBox(bench, aim)
      const move = dragOf(found)
      if (!found || !move) return null
      // A finger that pans the map moves nothing that it has not selected before.
      if (aim.touch && !isInHand(bench, found)) return null
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

/** What is selected together, where the hand has hold of one of them. */
function heldSeveral({ store }: Bench, found: Here): Several | null {
  const selection = store.selection.peek()
  if (selection?.kind !== 'several') return null
  const isHeld =
    found?.kind === 'station'
      ? selection.stations.includes(found.id)
      : (found?.kind === 'leg' || found?.kind === 'bend') && selection.lines.includes(found.line)
  return isHeld ? selection : null
}

/** Whether a thing, or what it is a part of, is selected. */
function isInHand(bench: Bench, found: NonNullable<Here>): boolean {
  const selection = bench.store.selection.peek()
  switch (found.kind) {
    case 'bend':
    case 'leg':
      return isSelected(bench, found.line)
    case 'corner':
      return selection?.kind === 'hazard' && selection.id === found.hazard
    default:
      return selection?.kind === found.kind && selection.id === found.id
  }
}

const isSelected = ({ store }: Bench, line: LineId): boolean => {
  const selection = store.selection.peek()
  return selection?.kind === 'line' && selection.id === line
}
