import type { FigureUnit } from '../../catalog/entry'
import { ENTRY_SCHEMAS } from '../../catalog/entry-schemas'
import type { Sources, Spread } from '../../catalog/sources'
import type { Supply } from '../../catalog/supply'
import type { TelephoneSet } from '../../catalog/telephone-set'
import type { Wire } from '../../catalog/wire'
import { partOf } from '../../schema/parts'
import type { Schema } from '../../schema/schema'
import type { Tongue } from '../../words/tongue'
import type { Quantity } from '../../words/units'

/** What a wire, a set and a supply have in common. */
export interface Entry {
  readonly id: string
  readonly name: string
  readonly source: string
  readonly sources?: Sources
  readonly spread?: Spread
}

/** One figure of a catalog entry: where it stands in the entry, and how it is asked for. */
export interface EntryFigure {
  /** As in the list of sources: `loopOhmPerKm`, `ringer.ohms`. */
  readonly at: string
  readonly label: string
  readonly quantity: Quantity
  /** May be left out. */
  readonly optional: boolean
}

/** A part of an entry that it may do without, and what it begins with where it is added. */
export interface EntryPart {
  readonly at: string
  readonly label: string
  readonly begins: object
  readonly figures: readonly EntryFigure[]
  /** Places in it that name a cell. */
  readonly cells: readonly string[]
}

/** Members that an entry may do without and that are objects with members of their own. */
type PartName<T> = {
  [K in keyof T]-?: NonNullable<T[K]> extends readonly unknown[] | string | number | boolean
    ? never
    : undefined extends T[K]
      ? string extends keyof NonNullable<T[K]>
        ? never
        : K
      : never
}[keyof T]
type PartWords<T> = {
  readonly [P in PartName<T>]: { readonly label: string; readonly begins: NonNullable<T[P]> }
}

const PARTS: PartWords<Wire> & PartWords<TelephoneSet> & PartWords<Supply> = {
  ringer: { label: 'It has a bell', begins: { ohms: 1000, minVolts: 20 } },
  generator: { label: 'It has a hand generator', begins: { volts: 80, hz: 20, ohms: 500 } },
  drop: { label: 'It has a drop for each line', begins: { ohms: 1000, minVolts: 15 } },
  battery: {
    label: 'It has a battery of its own',
    begins: { volts: 3, ampHours: 10, talkMA: 30, idleMA: 0 },
  },
  ring: { label: 'It rings', begins: { volts: 75, hz: 20, ohms: 450 } },
  indicator: { label: 'It has a lamp or LED in series', begins: { forwardVolts: 2, ohms: 10 } },
  powerW: { label: 'What it takes itself is known', begins: { idle: 1, talk: 2, ring: 5 } },
  fedBy: { label: 'A battery stands behind it', begins: { volts: 12, ampHours: 7, efficiencyPct: 80 } },
}

const QUANTITIES: Readonly<Record<FigureUnit, Quantity>> = {
  'Ω/km': 'ohmPerKm',
  'per °C': 'perC',
  'nF/km': 'nanoFPerKm',
  'mH/km': 'milliHPerKm',
  'µS/km': 'microSPerKm',
  'kg/km': 'kgPerKm',
  kg: 'massKg',
  N: 'forceN',
  mm: 'diameterMm',
  m: 'lengthM',
  Ω: 'ohm',
  V: 'volt',
  mA: 'mA',
  Hz: 'hz',
  dB: 'db',
  H: 'henry',
  µF: 'microF',
  Ah: 'ampHour',
  W: 'watt',
  '%': 'pct',
  cells: 'count',
  ports: 'count',
  calls: 'count',
  wires: 'count',
  'times that of air': 'ratio',
  'ringer equivalents': 'ratio',
}

/** `The loss` or `the loss` as the label of a field: `Loss`. */
export const labelOf = (what: string): string =>
  what.replace(/^[Tt]he (.)/, (_, first: string) => first.toUpperCase())

/** A label, with the temperature that a figure is told for as the person reads it. */
export const labelWords = (label: string, { temp }: Tongue): string => label.replace('20 °C', temp(20))

/** The figures of an entry in the order of its schema, those of the parts that it always has among them. */
function figuresOf(schema: Schema, before = ''): readonly EntryFigure[] {
  return Object.entries(partOf(schema).entries ?? {}).flatMap(([name, inner]): readonly EntryFigure[] => {
    const { limit, optional, entries } = partOf(inner)
    const at = `${before}${name}`
    if (entries) return optional ? [] : figuresOf(inner, `${at}.`)
    if (!limit) return []
    return [{ at, label: labelOf(limit.what), quantity: QUANTITIES[limit.unit as FigureUnit], optional }]
  })
}

/** The place at which an entry, or a part of one, names the cell that its battery is made of. */
const cellsOf = (schema: Schema, before = ''): readonly string[] =>
  partOf(schema).entries?.cell ? [`${before}cell`] : []

const partsOf = (schema: Schema): readonly EntryPart[] =>
  Object.entries(PARTS).flatMap(([at, words]) => {
    const part = partOf(schema).entries?.[at]
    return part ? [{ at, ...words, figures: figuresOf(part, `${at}.`), cells: cellsOf(part, `${at}.`) }] : []
  })

/** How an entry is asked for: its figures, the cell of its own battery, and the parts that it may do without. */
export interface Form {
  readonly figures: readonly EntryFigure[]
  readonly cells: readonly string[]
  readonly parts: readonly EntryPart[]
}

const formOf = (schema: Schema): Form => ({
  figures: figuresOf(schema),
  cells: cellsOf(schema),
  parts: partsOf(schema),
})

export const FORMS = {
  wire: formOf(ENTRY_SCHEMAS.wires),
  set: formOf(ENTRY_SCHEMAS.sets),
  supply: formOf(ENTRY_SCHEMAS.supplies),
} as const satisfies Record<string, Form>

/** Every figure that an entry of any kind may have, each place once: sets and supplies both have a mass. */
export const FIGURES: readonly EntryFigure[] = [
  ...new Map(
    Object.values(FORMS)
      .flatMap(({ figures, parts }) => [...figures, ...parts.flatMap((part) => part.figures)])
      .map((figure) => [figure.at, figure]),
  ).values(),
]
