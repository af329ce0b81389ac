import { type UnitSystem, unitOf } from './units'

/** `840 KB`, `12.4 MB`. */
export const formatBytes = (bytes: number): string =>
  bytes < 1e6 ? `${Math.max(1, Math.round(bytes / 1000))} KB` : `${(bytes / 1e6).toFixed(1)} MB`

/** `2.5 m`, `30 m`: the side of a cell, to two figures. */
export function formatCellM(cellM: number, system: UnitSystem): string {
  const unit = unitOf('lengthM', system)
  return `${Number(unit.fromSi(cellM).toPrecision(2))} ${unit.sign}`
}
