import { nice, tickStep, ticks } from 'd3-array'
import { spanOf } from '../geo/span'

export interface PlotAxis {
  /** What it measures and in which unit: `Loss, dB`. */
  readonly label: string
  /** Equal ratios take equal room; else equal differences do, and the axis begins at nothing. */
  readonly log?: true
  /** Where ticks stand; round numbers where it is silent. */
  readonly ticks?: readonly number[]
}

/** A number on an axis, and where on the drawing it stands. */
export interface Tick {
  readonly at: number
  readonly text: string
}

/** Figures that differ by less are the same on any drawing. */
const NOTHING = 1e-9

export interface Scale {
  readonly of: (value: number) => number
  readonly ticks: readonly number[]
  readonly step: number
}

/**
 * Lays an axis out between two places on the drawing.
 *
 * @param count about how many ticks it has room for
 * @param roundOff whether the axis ends at round numbers, rather than where the figures do
 */
export function scaleOf(
  axis: PlotAxis,
  values: readonly number[],
  [start, end]: readonly [number, number],
  count: number,
  roundOff: boolean,
): Scale {
  const [least, most] = spanOf(values)
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

/** The ticks of an axis, each where it stands. */
export const ticksOf = ({ of, ticks: values, step }: Scale): Tick[] =>
  values.map((value) => ({ at: round(of(value)), text: tickText(value, step) }))

/** A drawing needs no more than a tenth of its unit. */
export const round = (value: number): number => Math.round(value * 10) / 10
