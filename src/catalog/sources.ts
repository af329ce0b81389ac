import { figure, mark, oneOf, text } from '../schema/plain-values'
import { either, type Held, members, optional, recordOf } from '../schema/schema'

/**
 * How a figure is known: the ways, the surest first.
 *
 * `read`: in the work that is named, at the place that is named · `data-sheet`: a maker's own paper, read · `derived`: reckoned from
 * figures that are named · `practice`: what people in the trade do · `memory`: not looked up · `allowance`: a guess to be changed.
 */
export const SOURCE_KINDS = ['read', 'data-sheet', 'derived', 'practice', 'memory', 'allowance'] as const

export type SourceKind = (typeof SOURCE_KINDS)[number]

/** Where one figure comes from. */
const SOURCE = members('A source', {
  kind: oneOf('The kind of source', SOURCE_KINDS),
  says: text('What the source says'),
  /** A derived figure of which an input is from memory. */
  onMemory: optional(mark('The mark "onMemory"')),
})

export type Source = Held<typeof SOURCE>

/**
 * Where each quantity of an entry comes from. Keys are the names of the quantities, with a dot where they lie deeper
 * (`ringer.ohms`); a part (`ringer`) speaks for all of its own that are not named. A plan's own entry may hold bare sentences.
 */
export const SOURCES = recordOf(
  'The member "sources"',
  text('The name of a quantity'),
  either(text('A source'), SOURCE),
)

export type Sources = Held<typeof SOURCES>

/**
 * How far real things lie from a figure of an entry, in per cent, under the figure's own name (`ringer.minVolts`): of a hundred real
 * ones 95 lie between figure / (1 + p/100) and figure × (1 + p/100).
 */
export const SPREAD = recordOf(
  'The member "spread"',
  text('The name of a quantity'),
  figure({ what: 'A spread', unit: '%', min: 0.01, max: 10_000, orZero: true }),
)

export type Spread = Held<typeof SPREAD>

const of =
  (kind: SourceKind) =>
  (says: string): Source => ({ kind, says })

export const read = of('read')
export const dataSheet = of('data-sheet')
export const derived = of('derived')
export const practice = of('practice')
export const fromMemory = of('memory')
export const allowance = of('allowance')

/** Reckoned from figures of which at least one is from memory. */
export const derivedOnMemory = (says: string): Source => ({ kind: 'derived', says, onMemory: true })

/** A source as it is shown: a bare sentence in a plan's own entry is of no known kind. */
export type ShownSource = Source | { readonly kind?: undefined; readonly says: string }

/** The source of a quantity, or of the part that it belongs to: `ringer` speaks for `ringer.ohms`. */
export function sourceAt(sources: Sources | undefined, quantity: string): ShownSource | undefined {
  const found = sources?.[quantity] ?? sources?.[quantity.split('.')[0] ?? '']
  return typeof found === 'string' ? { says: found } : found
}

/** From memory, or derived from what is. */
export const restsOnMemory = (source: ShownSource | undefined): boolean =>
  source?.kind === 'memory' || (source?.kind === 'derived' && source.onMemory === true)
