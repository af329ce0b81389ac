import type { Position } from '../../geo/position'
import type { Place } from '../../plan/place'
import type { Aim, Bench } from '../bench'
import { sceneOf } from './scene'
import { nearestOnStretch, stationHere, whatsHere } from './whats-here'

/** A station draws what is aimed at from this much farther than other things are grasped; wire draws a finger from no farther than this, px. */
const SNAP = 1.5
const WIRE_REACH_PX = 14
const BEND_PX = 6

/** What the aim snaps to on the settled plan: what stands at the pointer only for the while is nothing. */
export function placeUnder(bench: Bench, aim: Aim, snap = SNAP): Place {
  const scene = sceneOf(bench.store.settled.peek(), bench)
  const station = stationHere(scene, aim.point, aim.reachPx * snap)
  if (station) return { kind: 'station', id: station }
  const onWire = { ...scene, stations: [], hazards: [], lines: scene.lines.map(asCrowded) }
  const found = whatsHere(onWire, aim.point, Math.min(aim.reachPx, WIRE_REACH_PX))
  if (found?.kind !== 'leg') return { kind: 'ground', position: aim.position }
  const { line, leg } = found
  const path = scene.lines.find(({ id }) => id === line)!.path
  const at = nearestOnStretch(aim.point, path[leg]!, path[leg + 1]!)
  const bends = bench.store.settled.peek().lines.get(line)!.bends
  // Beside a bend the bend is meant: no stub of a leg is left.
  const bend = [leg - 1, leg].find(
    (index) => bends[index] && Math.hypot(path[index + 1]!.x - at.x, path[index + 1]!.y - at.y) < BEND_PX,
  )
  const [lonDeg, latDeg] = bend === undefined ? bench.view.positionOf(at) : bends[bend]!
  return { kind: 'wire', line, leg, position: [lonDeg, latDeg] }
}

const asCrowded = <T extends object>(line: T) => ({ ...line, isCrowded: true })

/** Whether the aim is so near a place that the place is meant. */
export function isAimedAt({ pointOf }: Bench['view'], { point, reachPx }: Aim, place: Position): boolean {
  const { x, y } = pointOf(place)
  return Math.hypot(x - point.x, y - point.y) <= reachPx
}
