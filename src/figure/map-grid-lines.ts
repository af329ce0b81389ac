import { FALSE_NORTHING_M, lonLatFromUtm, utmFromLonLat, utmZone } from '../geo/utm'

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
const M_PER_DEG = 111_320
/** The metric grid's own limits of latitude. DMA TM 8358.2 (1989), section 2-1. */
const METRIC_SOUTH_DEG = -80
const METRIC_NORTH_DEG = 84

const stepFor = (steps: readonly number[], least: number): number =>
  steps.find((step) => step >= least) ?? steps.at(-1)!

const multiplesBetween = (step: number, low: number, high: number): number[] => {
  const first = Math.ceil(low / step)
  return Array.from(
    { length: Math.max(0, Math.floor(high / step) - first + 1) },
    (_, i) => (first + i) * step,
  )
}

const between = (from: number, to: number, parts: number): number[] =>
  Array.from({ length: parts + 1 }, (_, i) => from + ((to - from) * i) / parts)

/** Which grid lines to draw over a stretch of the map: the metric grid of its zones, or on small scales the graticule. */
export function gridLines(box: LonLatBox, metresPerPx: number): readonly GridLine[] {
  const middleDeg = (box.south + box.north) / 2
  const metric =
    metresPerPx <= LARGEST_METRIC_M_PER_PX && middleDeg > METRIC_SOUTH_DEG && middleDeg < METRIC_NORTH_DEG
  if (!metric) return graticule(box, metresPerPx)
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
    ...between(box.west, box.east, 4).flatMap((lon) => [
      utmFromLonLat(lon, box.south, zone),
      utmFromLonLat(lon, box.north, zone),
    ]),
    ...between(box.south, box.north, 4).flatMap((lat) => [
      utmFromLonLat(box.west, lat, zone),
      utmFromLonLat(box.east, lat, zone),
    ]),
  ]
  const eastings = rim.map((p) => p.eastingM)
  const northings = rim.map((p) => p.northingM)
  const [left, right] = [Math.min(...eastings), Math.max(...eastings)]
  const [bottom, top] = [Math.min(...northings), Math.max(...northings)]
  const turn =
    360 * Math.round((box.west - lonLatFromUtm({ zone, eastingM: 500_000, northingM: bottom })[0]) / 360)
  const place = (eastingM: number, northingM: number): [number, number] => {
    const [lon, lat] = lonLatFromUtm({ zone, eastingM, northingM })
    return [lon + turn, lat]
  }
  const east = multiplesBetween(stepM, left, right).map((eastingM) => ({
    across: 'east' as const,
    label: metricLabel(eastingM, stepM),
    points: keptBetween(
      between(bottom, top, 8).map((northingM) => place(eastingM, northingM)),
      box,
    ),
  }))
  const north = multiplesBetween(stepM, bottom, top).map((northingM) => ({
    across: 'north' as const,
    label: metricLabel(northingM < 0 ? northingM + FALSE_NORTHING_M : northingM, stepM),
    points: keptBetween(
      between(left, right, 8).map((eastingM) => place(eastingM, northingM)),
      box,
    ),
  }))
  return [...east, ...north].filter((line) => line.points.length > 1)
}

/** The part of a nearly straight line that lies within the longitudes of a box: a grid ends where its zone does. */
function keptBetween(points: readonly [number, number][], { west, east }: LonLatBox): [number, number][] {
  const kept: [number, number][] = []
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
  const leastDeg = (LEAST_PX * metresPerPx) / M_PER_DEG
  const lonStep = stepFor(STEPS_DEG, leastDeg / Math.max(0.1, Math.cos((middleDeg * Math.PI) / 180)))
  const latStep = stepFor(STEPS_DEG, leastDeg)
  const south = Math.max(box.south, -90)
  const north = Math.min(box.north, 90)
  return [
    ...multiplesBetween(lonStep, box.west, box.east).map((lon) => ({
      across: 'east' as const,
      label: { prefix: '', main: degreesText(lon - 360 * Math.round(lon / 360), 'E', 'W') },
      points: [
        [lon, south],
        [lon, north],
      ] as [number, number][],
    })),
    ...multiplesBetween(latStep, south, north).map((lat) => ({
      across: 'north' as const,
      label: { prefix: '', main: degreesText(lat, 'N', 'S') },
      points: [
        [box.west, lat],
        [box.east, lat],
      ] as [number, number][],
    })),
  ]
}

function degreesText(deg: number, positive: string, negative: string): string {
  const whole = Math.floor(Math.abs(deg) + 1e-9)
  const minutes = Math.round((Math.abs(deg) - whole) * 60)
  const side = deg === 0 || Math.abs(deg) === 180 ? '' : ` ${deg > 0 ? positive : negative}`
  return `${whole}°${minutes ? ` ${String(minutes).padStart(2, '0')}′` : ''}${side}`
}
