import { degreeM } from '../geo/earth'
import { wrapLonDeg } from '../geo/longitude'
import { hasUtm, utmZone, writtenNorthingM } from '../geo/utm'
import { degToRad } from '../units'
import { DEGREES, evenly, gridCurves, utmCoordinates } from './grid-lines'

/** Degrees; `west` and `east` may lie beyond ±180, and `east` is the greater. */
export interface LonLatBox {
  readonly west: number
  readonly south: number
  readonly east: number
  readonly north: number
}

export interface GridLine {
  readonly across: 'east' | 'north'
  /** `prefix` is written small: the digits that seldom change. */
  readonly label: { readonly prefix: string; readonly main: string }
  readonly points: readonly (readonly [lonDeg: number, latDeg: number])[]
}

/** Lines closer together than this on the screen would crowd it, px. */
const LEAST_PX = 96
/** Beyond this scale several grid zones would meet on the screen, so meridians and parallels take over, m/px. */
const LARGEST_METRIC_M_PER_PX = 150

const STEPS_M = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000]
const STEPS_DEG = [0.5, 1, 2, 5, 10, 15, 30]

const stepFor = (steps: readonly number[], least: number): number =>
  steps.find((step) => step >= least) ?? steps.at(-1)!

/** Which grid lines to draw over a stretch of the map: the metric grid of its zones, or on small scales the graticule. */
export function gridLines(box: LonLatBox, metresPerPx: number): readonly GridLine[] {
  const middleDeg = (box.south + box.north) / 2
  if (metresPerPx > LARGEST_METRIC_M_PER_PX || !hasUtm(middleDeg)) return graticule(box, metresPerPx)
  const stepM = stepFor(STEPS_M, LEAST_PX * metresPerPx)
  return zonesAcross(box).flatMap(({ zone, west, east }) => metricLines({ ...box, west, east }, zone, stepM))
}

/** The stretches of longitude that belong to one zone each. Every zone's edge lies on a multiple of 3°. */
function zonesAcross(box: LonLatBox): { zone: number; west: number; east: number }[] {
  const middleDeg = (box.south + box.north) / 2
  const stretches: { zone: number; west: number; east: number }[] = []
  for (let edge = Math.floor(box.west / 3) * 3; edge < box.east; edge += 3) {
    const zone = utmZone(edge + 1.5, middleDeg)
    const west = Math.max(edge, box.west)
    const east = Math.min(edge + 3, box.east)
    const last = stretches.at(-1)
    if (last?.zone === zone) last.east = east
    else stretches.push({ zone, west, east })
  }
  return stretches
}

function metricLines(box: LonLatBox, zone: number, stepM: number): GridLine[] {
  const rim = [
    ...evenly(box.west, box.east, 4).flatMap((lonDeg) => [
      [lonDeg, box.south] as const,
      [lonDeg, box.north] as const,
    ]),
    ...evenly(box.south, box.north, 4).flatMap((latDeg) => [
      [box.west, latDeg] as const,
      [box.east, latDeg] as const,
    ]),
  ]
  return gridCurves(utmCoordinates(zone, box.west), rim, [stepM, stepM], 8)
    .map(({ across, value, points }) => ({
      across,
      label: metricLabel(across === 'east' ? value : writtenNorthingM(value), stepM),
      points: keptBetween(points, box),
    }))
    .filter(({ points }) => points.length > 1)
}

/** The part of a nearly straight line that lies within the longitudes of a box: a grid ends where its zone does. */
function keptBetween(points: GridLine['points'], { west, east }: LonLatBox): GridLine['points'] {
  const kept: [lonDeg: number, latDeg: number][] = []
  for (const [i, [lon, lat]] of points.entries()) {
    const before = points[i - 1]
    if (before) {
      for (const edge of [west, east].sort((a, b) => (before[0] <= lon ? a - b : b - a))) {
        const t = (edge - before[0]) / (lon - before[0])
        if (t > 0 && t < 1) kept.push([edge, before[1] + (lat - before[1]) * t])
      }
    }
    if (lon >= west && lon <= east) kept.push([lon, lat])
  }
  return kept
}

/** Kilometres of the grid as maps print them: two principal digits, what leads them small, tenths and less of a kilometre after. */
function metricLabel(valueM: number, stepM: number): GridLine['label'] {
  const km = Math.floor(valueM / 1000 + 1e-9)
  const digits = String(km).padStart(2, '0')
  const decimals = stepM >= 1000 ? 0 : stepM >= 100 ? 1 : 2
  const rest = decimals
    ? String(Math.round(valueM - km * 1000))
        .padStart(3, '0')
        .slice(0, decimals)
    : ''
  return { prefix: digits.slice(0, -2), main: digits.slice(-2) + rest }
}

function graticule(box: LonLatBox, metresPerPx: number): GridLine[] {
  const middleDeg = (box.south + box.north) / 2
  const leastDeg = (LEAST_PX * metresPerPx) / degreeM(0).lonM
  const lonStep = stepFor(STEPS_DEG, leastDeg / Math.max(0.1, Math.cos(degToRad(middleDeg))))
  const latStep = stepFor(STEPS_DEG, leastDeg)
  const corners = [
    [box.west, Math.max(box.south, -90)],
    [box.east, Math.min(box.north, 90)],
  ] as const
  return gridCurves(DEGREES, corners, [lonStep, latStep], 1).map(({ across, value, points }) => ({
    across,
    label: {
      prefix: '',
      main: across === 'east' ? degreesText(wrapLonDeg(value), 'E', 'W') : degreesText(value, 'N', 'S'),
    },
    points,
  }))
}

function degreesText(deg: number, positive: string, negative: string): string {
  const whole = Math.floor(Math.abs(deg) + 1e-9)
  const minutes = Math.round((Math.abs(deg) - whole) * 60)
  const side = deg === 0 || Math.abs(deg) === 180 ? '' : ` ${deg > 0 ? positive : negative}`
  return `${whole}°${minutes ? ` ${String(minutes).padStart(2, '0')}′` : ''}${side}`
}
