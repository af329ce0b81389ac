import { degToRad, radToDeg } from '../units'
import { wrapLonDeg } from './longitude'
import type { Position } from './position'

/** Mean radius of the earth, m, by which stretches are told from short ones; no length follows from it. IUGG 1980: (2a + b) / 3 (from memory). */
export const MEAN_RADIUS_M = 6_371_008.8

/**
 * Angle between two places seen from the middle of the sphere, rad: 2 atan2(√h, √(1 − h)), h = sin² ½Δφ + cos φ₁ cos φ₂ sin² ½Δλ. It
 * keeps its figures for places near to each other.
 *
 * Source of all here: the formulas of spherical trigonometry, as in R. W. Sinnott, "Virtues of the haversine", Sky and Telescope 68
 * (1984), 159 (from memory).
 */
export function angleBetween(from: Position, to: Position): number {
  const half = Math.sin(degToRad(to[1] - from[1]) / 2) ** 2
  const across = Math.sin(degToRad(to[0] - from[0]) / 2) ** 2
  const h = half + Math.cos(degToRad(from[1])) * Math.cos(degToRad(to[1])) * across
  return 2 * Math.atan2(Math.sqrt(h), Math.sqrt(Math.max(0, 1 - h)))
}

/** True course at the start of the great circle from one place to another, rad, −π…π: atan2(sin Δλ cos φ₂, cos φ₁ sin φ₂ − sin φ₁ cos φ₂ cos Δλ). */
export function courseRad(from: Position, to: Position): number {
  const lonRad = degToRad(to[0] - from[0])
  const [fromRad, toRad] = [degToRad(from[1]), degToRad(to[1])]
  return Math.atan2(
    Math.sin(lonRad) * Math.cos(toRad),
    Math.cos(fromRad) * Math.sin(toRad) - Math.sin(fromRad) * Math.cos(toRad) * Math.cos(lonRad),
  )
}

/** The place at an angle from another along a course, both rad: sin φ = sin φ₁ cos σ + cos φ₁ sin σ cos α. */
export function placeAt(from: Position, alongRad: number, angleRad: number): [number, number] {
  const fromRad = degToRad(from[1])
  const [sin, cos] = [Math.sin(angleRad), Math.cos(angleRad)]
  const sinLat = Math.sin(fromRad) * cos + Math.cos(fromRad) * sin * Math.cos(alongRad)
  const lonRad = Math.atan2(Math.sin(alongRad) * sin * Math.cos(fromRad), cos - Math.sin(fromRad) * sinLat)
  return [wrapLonDeg(from[0] + radToDeg(lonRad)), radToDeg(Math.asin(Math.min(1, Math.max(-1, sinLat))))]
}
