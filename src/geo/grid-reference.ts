import { forward } from 'mgrs'
import type { Position } from './position'
import { upsReference } from './ups'
import { hasUtm } from './utm'

/** Military Grid Reference of a position to 1 m, spaced to be read out: `42U UV 12345 67890`, and beyond 84° N and 80° S `Z AH 12345 67890`. */
export function gridReference(position: Position): string | undefined {
  const [lonDeg, latDeg] = position
  if (!hasUtm(latDeg)) return upsReference(position)
  const parts = /^(\d{1,2}[A-Z])([A-Z]{2})(\d{5})(\d{5})$/.exec(forward([lonDeg, latDeg], 5))
  return parts ? parts.slice(1).join(' ') : undefined
}
