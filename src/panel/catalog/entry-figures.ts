import type { Sources } from '../../catalog/sources'
import type { Quantity } from '../../words/units'

/** What a wire, a set and a supply have in common. */
export interface Entry {
  readonly id: string
  readonly name: string
  readonly source: string
  readonly sources?: Sources
}

/** One figure of a catalog entry: where it stands in the entry, and how it is asked for. */
export interface EntryFigure {
  /** As in the list of sources: `loopOhmPerKm`, `ringer.ohms`. */
  readonly at: string
  readonly label: string
  readonly quantity: Quantity
  /** May be left out. */
  readonly optional?: true
}

/** A part of an entry that it may do without, and what it begins with where it is added. */
export interface EntryPart {
  readonly at: string
  readonly label: string
  readonly begins: Readonly<Record<string, number>>
  readonly figures: readonly EntryFigure[]
}

export const WIRE_FIGURES: readonly EntryFigure[] = [
  { at: 'loopOhmPerKm', label: 'Loop resistance at 20 °C', quantity: 'ohmPerKm' },
  { at: 'tempCoeffPerC', label: 'Rise of resistance', quantity: 'perC' },
  { at: 'nanoFPerKm', label: 'Capacitance', quantity: 'nanoFPerKm' },
  { at: 'wetNanoFPerKm', label: 'Capacitance, wet', quantity: 'nanoFPerKm', optional: true },
  { at: 'loopMilliHPerKm', label: 'Loop inductance', quantity: 'milliHPerKm' },
  { at: 'dryMicroSPerKm', label: 'Leakage, dry', quantity: 'microSPerKm' },
  { at: 'wetMicroSPerKm', label: 'Leakage, wet', quantity: 'microSPerKm' },
  { at: 'kgPerKm', label: 'Mass', quantity: 'kgPerKm' },
  { at: 'breakN', label: 'Breaking strength', quantity: 'forceN' },
]

export const SET_FIGURES: readonly EntryFigure[] = [
  { at: 'offHook.dcOhms', label: 'Resistance off hook', quantity: 'ohm' },
  { at: 'offHook.acOhms', label: 'Impedance to speech', quantity: 'ohm' },
  { at: 'offHook.minMA', label: 'Least current', quantity: 'mA' },
  { at: 'maxLossDb', label: 'Most speech loss', quantity: 'db' },
]

export const SET_PARTS: readonly EntryPart[] = [
  {
    at: 'ringer',
    label: 'It has a bell',
    begins: { ohms: 1000, minVolts: 20 },
    figures: [
      { at: 'ringer.ohms', label: 'Bell: resistance', quantity: 'ohm' },
      { at: 'ringer.henries', label: 'Bell: inductance', quantity: 'henry', optional: true },
      { at: 'ringer.microF', label: 'Bell: capacitor', quantity: 'microF', optional: true },
      { at: 'ringer.minVolts', label: 'Bell: least voltage', quantity: 'volt' },
    ],
  },
  {
    at: 'generator',
    label: 'It has a hand generator',
    begins: { volts: 80, hz: 20, ohms: 500 },
    figures: [
      { at: 'generator.volts', label: 'Generator: voltage', quantity: 'volt' },
      { at: 'generator.hz', label: 'Generator: frequency', quantity: 'hz' },
      { at: 'generator.ohms', label: 'Generator: resistance', quantity: 'ohm' },
    ],
  },
]

export const SUPPLY_FIGURES: readonly EntryFigure[] = [
  { at: 'volts', label: 'Voltage', quantity: 'volt' },
  { at: 'ohms', label: 'Feed resistance', quantity: 'ohm' },
  { at: 'maxMA', label: 'Current limit', quantity: 'mA', optional: true },
  { at: 'ampHours', label: 'Capacity', quantity: 'ampHour', optional: true },
  { at: 'endVolts', label: 'Voltage when spent', quantity: 'volt', optional: true },
  { at: 'insertionDb', label: 'Speech loss through it', quantity: 'db', optional: true },
]

export const SUPPLY_PARTS: readonly EntryPart[] = [
  {
    at: 'ring',
    label: 'It rings',
    begins: { volts: 75, hz: 20, ohms: 450 },
    figures: [
      { at: 'ring.volts', label: 'Ringing: voltage', quantity: 'volt' },
      { at: 'ring.hz', label: 'Ringing: frequency', quantity: 'hz' },
      { at: 'ring.ohms', label: 'Ringing: resistance', quantity: 'ohm' },
      { at: 'ring.maxLoad', label: 'Ringing: most ringer equivalents', quantity: 'ratio', optional: true },
    ],
  },
  {
    at: 'indicator',
    label: 'It has a lamp or LED in series',
    begins: { forwardVolts: 2, ohms: 10 },
    figures: [
      { at: 'indicator.forwardVolts', label: 'Lamp: forward voltage', quantity: 'volt' },
      { at: 'indicator.ohms', label: 'Lamp: resistance', quantity: 'ohm' },
    ],
  },
]

/** Every figure that an entry of any kind may have. Supplies, sets and wires share no place. */
export const FIGURES: readonly EntryFigure[] = [
  ...[...WIRE_FIGURES, ...SET_FIGURES, ...SUPPLY_FIGURES],
  ...[...SET_PARTS, ...SUPPLY_PARTS].flatMap((part) => part.figures),
]

type Members = Readonly<Record<string, unknown>>

/** What stands at a place of an entry. */
export const valueAt = (entry: object, at: string): unknown =>
  at.split('.').reduce<unknown>((value, name) => (value as Members | undefined)?.[name], entry)

/** The entry with another value at that place; undefined takes the member out. */
export function withValueAt<T extends object>(entry: T, at: string, value: unknown): T {
  const [name = '', ...deeper] = at.split('.')
  const { [name]: before, ...others } = entry as Members
  const after = deeper.length === 0 ? value : withValueAt((before ?? {}) as object, deeper.join('.'), value)
  return (after === undefined ? others : { ...others, [name]: after }) as T
}
