import { wrapText } from '../../figure/text-width'
import type { SheetRoom } from './paper-size'

/** The words at the left of a head are 10 pt in half of the sheet's width, and this much is reckoned in: sheet.css holds the same figures. */
const EM_MM = (10 * 25.4) / 72
const LINE_MM = 4.6
const BESIDE_MM = 30

/** The room that is left where long names make the head of a sheet higher: its height counts on one line each for the paper and the plan. */
export function roomUnderHead(room: SheetRoom, about: string, planTitle: string): SheetRoom {
  const em = (room.widthMm / 2 - BESIDE_MM) / EM_MM
  const linesOf = (text: string) => (text ? wrapText(text, em).length : 0)
  const more = Math.max(0, linesOf(about) + linesOf(`${planTitle} · sheet 99 of 99`) - 2)
  return { ...room, heightMm: room.heightMm - more * LINE_MM }
}
