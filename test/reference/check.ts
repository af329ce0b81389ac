/** A work outside the project, and where in it the figure stands. */
interface Source {
  /** Work, edition, year. Figures that were not read in the work itself say "from memory". */
  readonly work: string
  readonly place: string
}

/** One figure of a published work, and what the project makes of the same inputs. */
export interface Check {
  readonly source: Source
  readonly what: string
  readonly unit: string
  readonly published: number
  readonly computed: number
  /** Largest difference allowed, as a percentage of the published figure. */
  readonly tolerancePct: number
  readonly because: string
  /** The code is made of this very figure, so the check only shows that nothing got lost on the way. */
  readonly sameAsCode?: true
  /** The work gives a bound, not a value: `computed` must lie on this side of it. */
  readonly bound?: 'at least' | 'at most'
}

/** Checks that share a source and a tolerance. */
export const checks = (
  shared: Pick<Check, 'source' | 'tolerancePct' | 'because'> & Partial<Check>,
  rows: readonly (Pick<Check, 'what' | 'unit' | 'published' | 'computed'> & Partial<Check>)[],
): readonly Check[] => rows.map((row) => ({ ...shared, ...row }))

/** How far the computed figure is off, in per cent of the published one; 0 on the right side of a bound. */
export function differencePct({ published, computed, bound }: Check): number {
  if (bound === 'at least' && computed >= published) return 0
  if (bound === 'at most' && computed <= published) return 0
  return (100 * Math.abs(computed - published)) / Math.abs(published)
}

/** `read`: seen in the work, and not the figure that the code is made of · `memory`: not seen · `same`: what the code is made of. */
export type Known = 'read' | 'memory' | 'same'

/** A check that rests on memory says so in its source or in its own words. */
export function knownAs({ source, what, sameAsCode }: Check): Known {
  if (sameAsCode) return 'same'
  return `${source.work} ${source.place} ${what}`.includes('from memory') ? 'memory' : 'read'
}
