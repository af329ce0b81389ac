import { planeAbout } from '../../geo/plane'
import type { Position } from '../../geo/position'
import type { MapWish } from '../drawing/map-drawing'
import { frameIn } from '../drawing/map-frame'
import { windowOver } from '../drawing/map-window'
import { type Block, heightOfMm } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import { northsAt, type PaperSource } from '../paper-source'
import { mapBlocks } from './map-block'

/** The least height of the map, and what is kept for a line of names below it, mm. */
const LEAST_MM = 90
const NAMES_MM = 12

/** A map of all that must be on it, as high as its words below leave it. */
export function mapWithWords(
  source: PaperSource,
  room: SheetRoom,
  positions: readonly Position[],
  wish: MapWish & { readonly id: string; readonly sentences: readonly string[] },
): readonly Block[] {
  if (positions.length === 0) return []
  const words: readonly Block[] = wish.sentences.map((text) => ({ kind: 'text', text }))
  const leftMm = room.heightMm - heightOfMm(words, room.widthMm) - NAMES_MM
  const size = [room.widthMm, Math.max(LEAST_MM, leftMm)] as const
  const plane = planeAbout(positions)
  const window = windowOver(plane, positions, frameIn(...size))
  const norths = northsAt(plane.middle, source.date)
  return [...mapBlocks(source, window, size, norths, wish.id, wish), ...words]
}
