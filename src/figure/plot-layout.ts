import { type PlotAxis, round, scaleOf, type Tick, ticksOf } from './plot-scale'

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

/** A plot as it is drawn, in units of the drawing; the origin is at its top left. */
export interface PlotLayout {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly xTicks: readonly Tick[]
  readonly yTicks: readonly Tick[]
  readonly curves: readonly { readonly name: string; readonly path: string }[]
  readonly level: PlotLevel | null
  /** A name is empty where it would run into its neighbour's. */
  readonly places: readonly PlotPlace[]
}

export interface PlotPlace extends Tick {
  /** Which end of the name stands at the place. */
  readonly anchor: 'start' | 'middle' | 'end'
}

/** A line across, and where its name stands clear of the curves. */
export interface PlotLevel extends Tick {
  readonly nameX: number
  readonly nameY: number
  readonly anchor: 'start' | 'end'
}

export interface PlotSize {
  readonly width: number
  readonly height: number
}

/** Room around the frame: numbers at the left, the key and the names of places above, numbers and the x label below. */
const ROOM = { left: 38, right: 16, top: 42, bottom: 36 }
/** About one round number for so many units of the drawing. */
const UNITS_PER_TICK = { x: 60, y: 34 }
/** Width of a letter of a place's name, about, and the gap to the next name. */
const LETTER = 6.2
const GAP = 8

/** A level's name stands so far above or below it, and has room enough with so much to the next curve. */
const NAME_RISE = 5
const NAME_FALL = 14
const CLEAR = 14
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
    level: plot.level
      ? namedClear(
          { at: round(y.of(plot.level.y)), text: plot.level.name },
          { left, top, right, bottom },
          points.map((point) => ({ x: x.of(point.x), y: y.of(point.y) })),
        )
      : null,
    places: namedApart(plot.places.map((place) => ({ at: round(x.of(place.x)), text: place.name }))),
  }
}

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

/** Puts the name of a level at its right or left end, above or below it: where the curves leave it most room. */
function namedClear(
  level: Tick,
  frame: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number },
  points: readonly PlotPoint[],
): PlotLevel {
  const width = level.text.length * LETTER
  const places = (['end', 'start'] as const).flatMap((anchor) =>
    [-NAME_RISE, NAME_FALL].map((offset) => {
      const nameX = anchor === 'end' ? frame.right - 4 : frame.left + 4
      const [from, to] = anchor === 'end' ? [nameX - width, nameX] : [nameX, nameX + width]
      const middleY = level.at + offset - LETTER / 2
      const near = points.filter((point) => point.x >= from - GAP && point.x <= to + GAP)
      const roomY = Math.min(...near.map((point) => Math.abs(point.y - middleY)), CLEAR)
      const within = middleY > frame.top - NAME_FALL && middleY < frame.bottom - LETTER
      return { nameX, nameY: level.at + offset, anchor, room: within ? roomY : 0 }
    }),
  )
  const { room: _, ...best } = places.reduce((a, b) => (b.room > a.room ? b : a))
  return { ...level, ...best }
}
