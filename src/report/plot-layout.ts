import { nice, tickStep, ticks } from 'd3-array'

export interface PlotAxis {
  /** What it measures and in which unit: `Loss, dB`. */
  readonly label: string
  /** Equal ratios take equal room; else equal differences do, and the axis begins at nothing. */
  readonly log?: true
  /** Where ticks stand; round numbers where it is silent. */
  readonly ticks?: readonly number[]
}

export interface PlotPoint {
  readonly x: number
  readonly y: number
}

export interface PlotCurve {
  readonly name: string
  readonly points: readonly PlotPoint[]
}

/** A plot before it is drawn: figures in the units that its axes name. */
export interface Plot {
  readonly title: string
  /** The plot in a sentence, for those who do not see it. */
  readonly says: string
  readonly x: PlotAxis
  readonly y: PlotAxis
  readonly curves: readonly PlotCurve[]
  /** The least that is needed, or the most that is allowed. */
  readonly level?: { readonly name: string; readonly y: number }
  /** Places along the x axis that have a name. */
  readonly places: readonly { readonly name: string; readonly x: number }[]
}

/** A number on an axis, and where on the drawing it stands. */
export interface Tick {
  readonly at: number
  readonly text: string
}

/** A plot as it is drawn, in units of the drawing; the origin is at its top left. */
export interface PlotLayout {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly xTicks: readonly Tick[]
  readonly yTicks: readonly Tick[]
  readonly curves: readonly { readonly name: string; readonly path: string }[]
  readonly level: Tick | null
  /** A name is empty where it would run into its neighbour's. */
  readonly places: readonly PlotPlace[]
}

export interface PlotPlace extends Tick {
  /** Which end of the name stands at the place. */
  readonly anchor: 'start' | 'middle' | 'end'
}

export interface PlotSize {
  readonly width: number
  readonly height: number
}

/** Room around the frame: numbers at the left, the key and the names of places above, numbers and the x label below. */
const ROOM = { left: 38, right: 12, top: 42, bottom: 36 }
/** About one round number for so many units of the drawing. */
const UNITS_PER_TICK = { x: 60, y: 34 }
/** Width of a letter of a place's name, about, and the gap to the next name. */
const LETTER = 6.2
const GAP = 8

/** Figures that differ by less are the same on any drawing. */
const NOTHING = 1e-9

interface Scale {
  readonly of: (value: number) => number
  readonly ticks: readonly number[]
  readonly step: number
}

/** Lays a plot out in a drawing of some size: the pure half of drawing it. */
export function layOutPlot(plot: Plot, { width, height }: PlotSize): PlotLayout {
  const [left, top, right, bottom] = [ROOM.left, ROOM.top, width - ROOM.right, height - ROOM.bottom]
  const points = plot.curves.flatMap((curve) => curve.points)
  const heights = [...points.map(({ y }) => y), ...(plot.level ? [plot.level.y] : [])]
  const x = scaleOf(
    plot.x,
    points.map((point) => point.x),
    [left, right],
    (right - left) / UNITS_PER_TICK.x,
    false,
  )
  const y = scaleOf(plot.y, heights, [bottom, top], (bottom - top) / UNITS_PER_TICK.y, true)
  const ticksOf = (scale: Scale): Tick[] =>
    scale.ticks.map((value) => ({ at: round(scale.of(value)), text: tickText(value, scale.step) }))
  const path = (curve: PlotCurve) =>
    curve.points
      .map((point, k) => `${k === 0 ? 'M' : 'L'}${round(x.of(point.x))} ${round(y.of(point.y))}`)
      .join('')
  return {
    left,
    top,
    right,
    bottom,
    xTicks: ticksOf(x),
    yTicks: ticksOf(y),
    curves: plot.curves.map((curve) => ({ name: curve.name, path: path(curve) })),
    level: plot.level ? { at: round(y.of(plot.level.y)), text: plot.level.name } : null,
    places: namedApart(plot.places.map((place) => ({ at: round(x.of(place.x)), text: place.name }))),
  }
}

/** @param roundOff whether the axis ends at round numbers, rather than where the figures do */
function scaleOf(
  axis: PlotAxis,
  values: readonly number[],
  [start, end]: readonly [number, number],
  count: number,
  roundOff: boolean,
): Scale {
  const least = Math.min(...values)
  const most = Math.max(...values)
  if (axis.log) {
    const span = Math.log(most / least) || 1
    const of = (value: number) => start + ((end - start) * Math.log(value / least)) / span
    return { of, ticks: axis.ticks ?? [least, most], step: 1 }
  }
  const [from, asked] = [Math.min(0, least), Math.max(0, most)]
  const to = asked - from > NOTHING ? asked : from + 1
  const [low, high] = roundOff ? nice(from, to, count) : [from, to]
  const of = (value: number) => start + ((end - start) * (value - low)) / (high - low)
  return { of, ticks: axis.ticks ?? ticks(low, high, count), step: tickStep(low, high, count) }
}

/** A tick's number with the digits that its step needs, and a true minus. */
const tickText = (value: number, step: number): string =>
  value.toFixed(Math.max(0, -Math.floor(Math.log10(step) + 1e-9))).replace('-', '−')

/** The first and the last keep their names, within the frame; between them, those that have room. */
function namedApart(places: readonly Tick[]): PlotPlace[] {
  const last = places.length - 1
  const anchored = places.map(
    (place, k): PlotPlace => ({ ...place, anchor: k === 0 ? 'start' : k === last ? 'end' : 'middle' }),
  )
  let clearFrom = Number.NEGATIVE_INFINITY
  const clearTo = anchored[last] ? spanOf(anchored[last])[0] : 0
  return anchored.map((place, k) => {
    const [from, to] = spanOf(place)
    const clear = from >= clearFrom && (k === last || to + GAP <= clearTo)
    if (!clear && k !== last) return { ...place, text: '' }
    clearFrom = to + GAP
    return place
  })
}

function spanOf({ at, text, anchor }: PlotPlace): readonly [number, number] {
  const width = text.length * LETTER
  const from = anchor === 'start' ? at : anchor === 'end' ? at - width : at - width / 2
  return [from, from + width]
}

const round = (value: number): number => Math.round(value * 10) / 10
