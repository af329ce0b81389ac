import type { DatumShift } from '../geo/datum-shift'
import { type UnitSystem, unitOf } from './units'

/** `840 KB`, `12.4 MB`. */
export const formatBytes = (bytes: number): string =>
  bytes < 1e6 ? `${Math.max(1, Math.round(bytes / 1000))} KB` : `${(bytes / 1e6).toFixed(1)} MB`

/** What a person should know of a file that lies in another datum: every place of it may be off by so much. */
export const shiftWords = ({ accuracyM }: DatumShift, system: UnitSystem): string =>
  accuracyM === undefined
    ? 'lies in another datum, brought to WGS 84 by one shift; how well nobody says, so compare a place that you know'
    : `lies in another datum, brought to WGS 84 by one shift that is good to about ${formatCellM(accuracyM, system)}`

/** `2.5 m`, `30 m`: the side of a cell, to two figures. */
export function formatCellM(cellM: number, system: UnitSystem): string {
  const unit = unitOf('lengthM', system)
  return `${Number(unit.fromSi(cellM).toPrecision(2))} ${unit.sign}`
}
