/** How a figure is known: the ways, the surest first. */
export const SOURCE_KINDS = ['read', 'data-sheet', 'derived', 'practice', 'memory', 'allowance'] as const

/**
 * `read`: in the work that is named, at the place that is named · `data-sheet`: a maker's own paper, read · `derived`: reckoned from
 * figures that are named · `practice`: what people in the trade do · `memory`: not looked up · `allowance`: a guess to be changed.
 */
export type SourceKind = (typeof SOURCE_KINDS)[number]

/** Where one figure comes from. */
export interface Source {
  readonly kind: SourceKind
  readonly says: string
  /** A derived figure of which an input is from memory. */
  readonly onMemory?: true
}

/**
 * Where each quantity of an entry comes from. Keys are the names of the quantities, with a dot where they lie deeper
 * (`ringer.ohms`); a part (`ringer`) speaks for all of its own that are not named. A plan's own entry may hold bare sentences.
 */
export type Sources = Readonly<Record<string, Source | string>>

/**
 * How far real things lie from a figure of an entry, in per cent, under the figure's own name (`ringer.minVolts`): of a hundred real
 * ones 95 lie between figure / (1 + p/100) and figure × (1 + p/100).
 */
export type Spread = Readonly<Record<string, number>>

/** A source as it is shown: a bare sentence in a plan's own entry is of no known kind. */
export type ShownSource = Source | { readonly kind?: undefined; readonly says: string }

/** The source of a quantity, or of the part that it belongs to: `ringer` speaks for `ringer.ohms`. */
export function sourceAt(sources: Sources | undefined, quantity: string): ShownSource | undefined {
  const found = sources?.[quantity] ?? sources?.[quantity.split('.')[0] ?? '']
  return typeof found === 'string' ? { says: found } : found
}
