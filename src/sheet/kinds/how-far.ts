import { planeAbout } from '../../geo/plane'
import type { Position } from '../../geo/position'
import { frameIn } from '../drawing/map-frame'
import { windowOver } from '../drawing/map-window'
import type { FarOnPaper } from '../far-on-paper'
import { type Block, heightOfMm } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import { northsAt, type PaperSource } from '../paper-source'
import { mapBlocks } from './map-block'

/** The least height of the map, and what is kept for a line of names below it, mm. */
const LEAST_MM = 90
const NAMES_MM = 12

/** The net with the ground on which one telephone more could stand, and below it how far that is, in words. */
export function howFarMap(source: PaperSource, far: FarOnPaper, room: SheetRoom): readonly Block[] {
  const stations = [...source.plan.stations.values()].map(({ position }) => position)
  // The surest shade is what somebody will stand in; a wider one may run off the sheet.
  const surest = far.shades.findLast(({ limit }) => limit !== 'stock') ?? far.shades.at(-1)
  const positions: readonly Position[] = [...stations, ...(surest?.area.flat(2) ?? [])]
  if (positions.length === 0) return []
  const words: readonly Block[] = far.sentences.map((text) => ({ kind: 'text', text }))
  const leftMm = room.heightMm - heightOfMm(words, room.widthMm) - NAMES_MM
  const size = [room.widthMm, Math.max(LEAST_MM, leftMm)] as const
  const plane = planeAbout(positions)
  const window = windowOver(plane, positions, frameIn(...size))
  const norths = northsAt(plane.middle, source.date)
  return [...mapBlocks(source, window, size, norths, 'how-far', { far }), ...words]
}
