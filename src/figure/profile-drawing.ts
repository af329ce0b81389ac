import { tickStep, ticks } from 'd3-array'
import { spanOf } from '../geo/span'
import type { LineProfile, ProfilePoint } from '../report/line-profile'
import { type Unit, type UnitSystem, unitOf } from '../words/units'
import { textWidthEm } from './text-width'

/** A place on the drawing and what stands there. */
export interface ProfileMark {
  readonly x: number
  readonly y: number
  readonly text: string
}

/** A profile as it is drawn, for the screen and for paper alike; the origin is at the top left. */
export interface ProfileDrawing extends ProfileSize {
  readonly left: number
  readonly right: number
  readonly bottom: number
  /** Outline of the ground, piece by piece where it is not known all along, and the same closed down to the axis. */
  readonly ground: string
  readonly body: string
  /** The ground again where a leg is steep. */
  readonly steep: string
  /** Wire along the ground, by its lay. */
  readonly wires: readonly { readonly lay: string; readonly path: string }[]
  readonly hung: string
  readonly supports: string
  /** The bends between legs, on the ground. */
  readonly bends: readonly { readonly x: number; readonly y: number }[]
  /** A name is empty where it would run into its neighbour's. */
  readonly crossings: readonly ProfileMark[]
  readonly xTicks: readonly ProfileMark[]
  readonly yTicks: readonly ProfileMark[]
  readonly xUnit: string
  readonly yUnit: string
  /** How many times heights are stretched against lengths. */
  readonly stretch: number
  readonly xOf: (atM: number) => number
  readonly atMOf: (x: number) => number
  readonly yOf: (heightM: number) => number
}

/** A profile without the functions by which a screen follows a pointer: a value that a worker can hand over. */
export type FlatProfile = Omit<ProfileDrawing, 'xOf' | 'atMOf' | 'yOf'>

export interface ProfileSize {
  readonly width: number
  readonly height: number
  /** Size of its letters, in units of the drawing. */
  readonly letter: number
}

/** How much heights are stretched, in words that begin a sentence. */
export const stretchWords = ({ stretch }: ProfileDrawing): string =>
  stretch < 1.5
    ? 'Heights and lengths are to one scale'
    : `Heights are stretched ${Math.round(stretch)} times`

/** Heights are never stretched more: level ground must look level. */
const MOST_STRETCH = 25
/** Letters are about so wide, of their height. */
const LETTER_WIDTH = 0.56

/** Lays a profile out in a drawing of some size. */
export function drawProfile(
  profile: LineProfile,
  { width, height, letter }: ProfileSize,
  system: UnitSystem,
): ProfileDrawing {
  const { ground, lengthM, legs, hung, supports } = profile
  const tops = supports.map(({ topM }) => topM)
  const [lowestM] = spanOf([ground.lowestM ?? 0, ...hung.flat().map(({ heightM }) => heightM)])
  const [, highestM] = spanOf([ground.highestM ?? 0, ...tops])
  // The widest height that may stand beside the axis keeps all of its figures.
  const widest = [lowestM, highestM].map(
    (m) => textWidthEm(unitOf('lengthM', system).fromSi(m).toFixed(0)) * letter,
  )
  const left = Math.max(letter * 3.4, Math.max(...widest) + letter * 1.2)
  const right = width - letter * 0.6
  const top = letter * 2
  const bottom = height - letter * 1.8
  const perM = (right - left) / Math.max(lengthM, 1)
  const roomM = Math.max(highestM - lowestM, 1) * 1.12
  const upPerM = Math.min((bottom - top) / roomM, perM * MOST_STRETCH)
  // What is left of the room lies half above, half below.
  const baseM = (lowestM + highestM) / 2 - (bottom - top) / upPerM / 2
  const xOf = (atM: number) => left + atM * perM
  const yOf = (heightM: number) => bottom - (heightM - baseM) * upPerM

  const samples = thinned(
    ground.samples.map(({ distanceM, heightM }) => ({ atM: distanceM, heightM })),
    Math.max(1, right - left),
    lengthM,
  )
  const stretches = knownStretches(samples)
  const within = (startM: number, endM: number) => knownStretches(clip(samples, startM, endM))
  const pathOf = (points: readonly ProfilePoint[]) =>
    points.map(({ atM, heightM }, i) => `${i ? 'L' : 'M'}${round(xOf(atM))} ${round(yOf(heightM))}`).join('')
  const groundAt = (atM: number) => {
    const point = clip(samples, atM, atM)[0]
    return point?.heightM === undefined ? bottom : yOf(point.heightM)
  }
  const y = axis(
    unitOf('lengthM', system),
    baseM,
    baseM + (bottom - top) / upPerM,
    (bottom - top) / (letter * 3),
  )
  const x = axis(
    lengthM < 2000 ? unitOf('lengthM', system) : unitOf('lengthKm', system),
    0,
    lengthM,
    (right - left) / (letter * 5),
  )
  return {
    ...{ width, height, letter, left, right, bottom, xOf, yOf },
    ground: stretches.map(pathOf).join(''),
    body: stretches
      .map((points) => {
        const [first, last] = [points[0]!, points.at(-1)!]
        return `${pathOf(points)}L${round(xOf(last.atM))} ${bottom}L${round(xOf(first.atM))} ${bottom}Z`
      })
      .join(''),
    steep: legs
      .filter(({ isSteep }) => isSteep)
      .flatMap(({ startM, endM }) => within(startM, endM).map(pathOf))
      .join(''),
    wires: legs
      .filter(({ lay }) => lay !== 'overhead')
      .map(({ lay, startM, endM }) => ({ lay, path: within(startM, endM).map(pathOf).join('') })),
    hung: hung.map(pathOf).join(''),
    supports: supports
      .map(({ atM, heightM, topM }) => `M${round(xOf(atM))} ${round(yOf(heightM))}V${round(yOf(topM))}`)
      .join(''),
    bends: legs.slice(1).map(({ startM }) => ({ x: round(xOf(startM)), y: round(groundAt(startM)) })),
    crossings: namedApart(
      profile.crossings.map(({ atM, name }) => ({
        x: round(xOf(atM)),
        y: round(groundAt(atM)),
        text: name,
      })),
      letter * LETTER_WIDTH,
      left,
      right,
    ),
    xTicks: x.ticks.map(({ valueM, text }) => ({ x: round(xOf(valueM)), y: bottom, text })),
    yTicks: y.ticks.map(({ valueM, text }) => ({ x: left, y: round(yOf(valueM)), text })),
    xUnit: x.unit,
    yUnit: y.unit,
    stretch: upPerM / perM,
    atMOf: (at) => Math.min(lengthM, Math.max(0, (at - left) / perM)),
  }
}

interface MaybePoint {
  readonly atM: number
  readonly heightM: number | undefined
}

const isKnown = (point: MaybePoint): point is ProfilePoint => point.heightM !== undefined

/** The highest and the lowest of the samples under each unit of the drawing: more would not be seen. */
function thinned(samples: readonly MaybePoint[], columns: number, lengthM: number): readonly MaybePoint[] {
  if (samples.length <= columns * 3) return samples
  const kept: MaybePoint[] = []
  let column = -1
  let held: MaybePoint[] = []
  const keep = () => {
    const known = held.filter(isKnown)
    if (known.length < held.length) for (const point of held) kept.push(point)
    else if (known.length > 0) {
      const low = known.reduce((a, b) => (b.heightM < a.heightM ? b : a))
      const high = known.reduce((a, b) => (b.heightM > a.heightM ? b : a))
      kept.push(...[low, high].sort((a, b) => a.atM - b.atM))
    }
    held = []
  }
  for (const sample of samples) {
    const own = Math.floor((sample.atM / lengthM) * columns)
    if (own !== column) keep()
    column = own
    held.push(sample)
  }
  keep()
  const [first, last] = [samples[0]!, samples.at(-1)!]
  return [first, ...kept.filter(({ atM }) => atM > first.atM && atM < last.atM), last]
}

/** Stretches in which every height is known. */
function knownStretches(points: readonly MaybePoint[]): ProfilePoint[][] {
  const stretches: ProfilePoint[][] = []
  let open: ProfilePoint[] | undefined
  for (const point of points) {
    if (!isKnown(point)) open = undefined
    else if (open) open.push(point)
    else {
      open = [point]
      stretches.push(open)
    }
  }
  return stretches.filter(({ length }) => length > 1)
}

/** The samples between two places, with both places among them. */
function clip(samples: readonly MaybePoint[], startM: number, endM: number): MaybePoint[] {
  const at = (atM: number): MaybePoint => {
    const next = samples.findIndex((sample) => sample.atM >= atM)
    const b = samples[next < 0 ? samples.length - 1 : next]!
    const a = samples[Math.max(0, next - 1)]!
    if (a.heightM === undefined || b.heightM === undefined) return { atM, heightM: undefined }
    const t = b.atM > a.atM ? (atM - a.atM) / (b.atM - a.atM) : 0
    return { atM, heightM: a.heightM + (b.heightM - a.heightM) * Math.min(1, t) }
  }
  return [at(startM), ...samples.filter(({ atM }) => atM > startM && atM < endM), at(endM)]
}

function axis(unit: Unit, fromM: number, toM: number, count: number) {
  const perM = unit.fromSi(1)
  const [from, to] = [fromM * perM, toM * perM]
  const step = tickStep(from, to, count)
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
  return {
    unit: unit.sign,
    ticks: ticks(from, to, count).map((value) => ({
      valueM: value / perM,
      text: value.toFixed(digits).replace('-', '−'),
    })),
  }
}

function namedApart(
  marks: readonly ProfileMark[],
  letterWidth: number,
  left: number,
  right: number,
): ProfileMark[] {
  let clearFrom = Number.NEGATIVE_INFINITY
  return marks.map((mark) => {
    const half = (mark.text.length * letterWidth) / 2
    const fits = mark.x - half >= clearFrom && mark.x - half >= left && mark.x + half <= right
    if (!fits) return { ...mark, text: '' }
    clearFrom = mark.x + half + letterWidth
    return mark
  })
}

const round = (value: number): number => Math.round(value * 10) / 10
