import type { Burden, ShownNet } from '../../jobs/shelf-answers'

/** What came of a search, as far as it has gone. */
export interface Sought {
  readonly nets: readonly ShownNet[]
  readonly burdens: ReadonlyMap<number, Burden>
  readonly missing: readonly string[]
  readonly more: readonly string[]
  /** How sure it is that none is better; empty while the search goes on, or where it was stopped. */
  readonly says: string
  /** Whether the places were on the map, so that their stations stay. */
  readonly onMap: boolean
}
