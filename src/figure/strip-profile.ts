import { round, type StripDrawing, type StripLine, type StripStretch } from './strip'

/** Heights are never stretched more against lengths. */
const MOST_STRETCH = 25

interface ProfileRoom {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly perM: number
  readonly xOf: (groundM: number) => number
}

export function profileOf(
  { ground, hung, heightText }: StripLine,
  { fromM, toM }: StripStretch,
  { top, bottom, perM, xOf }: ProfileRoom,
): StripDrawing['profile'] {
  const within = (points: StripLine['ground']) => points.filter(([atM]) => atM >= fromM && atM <= toM)
  const seen = within(ground)
  if (seen.length < 2) return null
  const wires = hung.map(within).filter(({ length }) => length > 1)
  const heights = [...seen, ...wires.flat()].map(([, heightM]) => heightM)
  const low = heights.reduce((a, b) => Math.min(a, b))
  const high = heights.reduce((a, b) => Math.max(a, b))
  const upPerM = Math.min((bottom - top - 2) / Math.max(high - low, 1), perM * MOST_STRETCH)
  const yOf = (heightM: number) => round(bottom - 1 - (heightM - low) * upPerM)
  const path = (points: StripLine['ground']) =>
    points.map(([atM, heightM], i) => `${i ? 'L' : 'M'}${xOf(atM)} ${yOf(heightM)}`).join('')
  const outline = path(seen)
  const highY = yOf(high)
  const lowY = yOf(low)
  return {
    ground: outline,
    body: `${outline}L${xOf(seen.at(-1)![0])} ${bottom}L${xOf(seen[0]![0])} ${bottom}Z`,
    hung: wires.map(path).join(''),
    heights: [
      { y: lowY, text: heightText(low) },
      ...(lowY - highY > 3 ? [{ y: highY, text: heightText(high) }] : []),
    ],
  }
}
