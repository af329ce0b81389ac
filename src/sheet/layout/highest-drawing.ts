import type { Block } from './block'
import { breakIntoSheets } from './break-sheets'
import type { SheetRoom } from './paper-size'

/** The highest drawing, of these heights in mm, for which all that stands below it takes no more sheets than below a low one. */
export function heightOfFewestSheets(
  heights: readonly number[],
  below: readonly Block[],
  room: SheetRoom,
): number {
  const sheetsWith = (heightMm: number) =>
    breakIntoSheets([{ kind: 'drawing', heightMm, drawing: null }, ...below], room).length
  const fewest = Math.min(...heights.map(sheetsWith))
  return heights.find((heightMm) => sheetsWith(heightMm) === fewest)!
}
