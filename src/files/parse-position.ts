import type { Position } from '../geo/position'
import { type Check, listOf } from '../plan/shape'
import { valueWords } from '../schema/limit'

const isFigure = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value)

/** A position on the globe: [longitude, latitude] or [longitude, latitude, elevation]. */
export const position: Check = (value, at, faults) => {
  if (!Array.isArray(value) || value.length < 2 || value.length > 3 || !value.every(isFigure)) {
    const message = `The position is ${positionWords(value)}: give [longitude, latitude], in degrees, or these and an elevation in metres.`
    faults.push({ code: value === undefined ? 'missing' : 'wrong-type', at, message })
    return
  }
  const [lonDeg, latDeg] = value as unknown as Position
  if (Math.abs(lonDeg) <= 180 && Math.abs(latDeg) <= 90) return
  const message = `Longitude ${lonDeg}°, latitude ${latDeg}° is off the globe: give the longitude first, from −180 to 180, then the latitude, from −90 to 90.`
  faults.push({ code: 'off-globe', at, message })
}

const positionWords = (value: unknown): string =>
  Array.isArray(value)
    ? `[${value.slice(0, 4).map(valueWords).join(', ')}${value.length > 4 ? ', …' : ''}]`
    : valueWords(value)

// Adding 0 turns −0, which a file cannot hold, into 0.
export const toPosition = ([lonDeg, latDeg, elevationM]: Position): Position =>
  elevationM === undefined ? [lonDeg + 0, latDeg + 0] : [lonDeg + 0, latDeg + 0, elevationM + 0]

const ringPath = listOf('The ring', position, { min: 4 })

/** A closed ring: its last position is its first. */
export const ring: Check = (value, at, faults) => {
  const before = faults.length
  ringPath(value, at, faults)
  if (faults.length > before) return
  const path = value as readonly Position[]
  const [first, last] = [path[0]!, path.at(-1)!]
  if (first[0] === last[0] && first[1] === last[1]) return
  const message = 'The ring is open: end it with the position that it starts with.'
  faults.push({ code: 'open-ring', at: `${at}[${path.length - 1}]`, message })
}
