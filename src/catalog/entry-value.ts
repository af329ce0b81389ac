import type { Sources, Spread } from './sources'

type Members = Readonly<Record<string, unknown>>

/** What stands at a place of an entry, dotted where it lies deeper: `ringer.ohms`. */
export const valueAt = (entry: object, at: string): unknown =>
  at
    .split('.')
    .reduce<unknown>(
      (value, name) => (typeof value === 'object' && value !== null ? (value as Members)[name] : undefined),
      entry,
    )

/** The entry with another value at that place; undefined takes the member out. */
export function withValueAt<T extends object>(entry: T, at: string, value: unknown): T {
  const [name = '', ...deeper] = at.split('.')
  const { [name]: before, ...others } = entry as Members
  const after = deeper.length === 0 ? value : withValueAt((before ?? {}) as object, deeper.join('.'), value)
  return (after === undefined ? others : { ...others, [name]: after }) as T
}

/** A figure as a person has it now: typed by hand, or measured within so many per cent. */
export interface TypedFigure {
  readonly at: string
  readonly value: unknown
  /** 95 of 100 such measurements lie within; absent: it was not measured. */
  readonly meterPct?: number | undefined
  /** How it came about; absent: said in general words. */
  readonly says?: string
}

/** The entry with that figure in the place of the printed one, which takes source and spread of the printed one away. A measured one has the spread of the meter. */
export function withFigure<T extends { readonly sources?: Sources; readonly spread?: Spread }>(
  entry: T,
  { at, value, meterPct, says }: TypedFigure,
): T {
  const { [at]: _, ...others } = entry.spread ?? {}
  const pct = typeof value === 'number' ? meterPct : undefined
  const spread = pct === undefined ? others : { ...others, [at]: pct }
  const measured = pct === undefined ? {} : { [`spread.${at}`]: `Measured, within ${pct} %.` }
  const how = says ?? (pct === undefined ? 'Changed by hand.' : `Measured, within ${pct} %.`)
  const sources = { ...entry.sources, [at]: how, ...measured }
  return withValueAt({ ...entry, sources, ...((entry.spread || pct) && { spread }) }, at, value)
}

/** The entry with another spread of one figure, per cent; undefined: it is exact. */
export function withSpread<T extends { readonly sources?: Sources; readonly spread?: Spread }>(
  entry: T,
  at: string,
  pct: number | undefined,
): T {
  const { [at]: _, ...others } = entry.spread ?? {}
  const spread = pct === undefined ? others : { ...others, [at]: pct }
  return { ...entry, spread, sources: { ...entry.sources, [`spread.${at}`]: 'Typed by hand.' } }
}
