import type { FarOnPaper } from '../far-on-paper'
import type { Block } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import type { PaperSource } from '../paper-source'
import { mapWithWords } from './map-with-words'

/** The net with the ground on which one telephone more could stand, and below it how far that is, in words. */
export function howFarMap(source: PaperSource, far: FarOnPaper, room: SheetRoom): readonly Block[] {
  const stations = [...source.plan.stations.values()].map(({ position }) => position)
  // The surest shade is what somebody will stand in; a wider one may run off the sheet.
  const surest = far.shades.findLast(({ limit }) => limit !== 'stock') ?? far.shades.at(-1)
  const { sentences } = far
  return mapWithWords(source, room, [...stations, ...(surest?.area.flat(2) ?? [])], {
    ...{ far, sentences, id: 'how-far' },
  })
}
