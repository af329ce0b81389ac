import { figure, idText, text } from '../schema/plain-values'
import { optional } from '../schema/schema'
import { SOURCES, SPREAD } from './sources'

/** Units in which the figures of an entry are given. */
export type FigureUnit =
  | 'Ω/km'
  | 'per °C'
  | 'nF/km'
  | 'mH/km'
  | 'µS/km'
  | 'kg/km'
  | 'kg'
  | 'N'
  | 'mm'
  | 'm'
  | 'Ω'
  | 'V'
  | 'mA'
  | 'Hz'
  | 'dB'
  | 'H'
  | 'µF'
  | 'Ah'
  | 'W'
  | '%'
  | 'cells'
  | 'ports'
  | 'calls'
  | 'wires'
  | 'times that of air'
  | 'ringer equivalents'

/** From the least that such a thing has to the most, or none at all: a loss, a leakage, a least current. */
export const orNone = (what: string, unit: FigureUnit, min: number, max: number) =>
  figure({ what, unit, min, max, orZero: true })

/** From the least that such a thing has to the most: what something is divided by, or what is nothing at zero. */
export const from = (what: string, unit: FigureUnit, min: number, max: number) =>
  figure({ what, unit, min, max })

/** A count: so many whole things. */
export const howMany = (what: string, unit: FigureUnit, min: number, max: number) =>
  figure({ what, unit, min, max, whole: true })

/** The members that come first in every entry, in a file too. */
export const named = (thing: string) => ({
  id: idText(`The id of the ${thing}`),
  /** Absent in a file: as the id. */
  name: text('The name'),
})

/** The members that come last. */
export const SOURCED = {
  /** One line for the whole entry. Absent in a file: not stated. */
  source: text('The source'),
  /** The same quantity by quantity. */
  sources: optional(SOURCES),
  spread: optional(SPREAD),
}
