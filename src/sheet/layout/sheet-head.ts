import { textWidthEm, wrapText } from '../../figure/text-width'
import type { UnitSystem } from '../../words/units'
import { PICTURE_MM } from '../scene/scene'
import { GUTTER_MM } from './block'
import type { SheetRoom } from './paper-size'
import { CODE_MM } from './sheet-code'

const UNITS = { metric: 'm and km', us: 'ft and miles' } as const

/** What all figures of a sheet count from. */
export const datumWords = (system: UnitSystem): string => `Datum WGS 84, true north up, ${UNITS[system]}`

/** The words of a head are 10 pt: sheet.css holds the same figures. */
const EM_MM = (10 * 25.4) / 72
const LINE_MM = 4.6
/** Beside the words at the right, mm. */
const GAP_MM = 6
/** The words at the right take so much at the most, beside a large code so much of what that leaves. */
const MOST_SHARE = 0.5
const MOST_BESIDE_CODE = 0.6

/** The room that is left where long names make the head of a sheet higher: its height counts on one line each for the paper and the plan. */
export function roomUnderHead(room: SheetRoom, about: string, planTitle: string, hasCode = false): SheetRoom {
  const widthMm = hasCode ? room.widthMm - CODE_MM - GUTTER_MM : room.widthMm
  const mostMm = (hasCode ? MOST_BESIDE_CODE : MOST_SHARE) * widthMm
  const basisMm = Math.min(mostMm, textWidthEm(datumWords('us')) * EM_MM)
  const em = (widthMm - basisMm - (hasCode ? GAP_MM : PICTURE_MM + 2 * GAP_MM)) / EM_MM
  const linesOf = (text: string) => (text ? wrapText(text, em).length : 0)
  const more = Math.max(0, linesOf(about) + linesOf(`${planTitle} · sheet 99 of 99`) - 2)
  return { ...room, heightMm: room.heightMm - more * LINE_MM }
}
