import type { Catalog } from '../catalog/catalog'
import type { Wire } from '../catalog/wire'
import type { MeasuredLine } from '../measure/measured'
import { remembering } from '../memo'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import type { Oddity } from './explain'
import type { Expected, Reading } from './readings'
import type { WireMember } from './wire-figures'

/** A figure of a lot of wire as readings have it, at 20 °C: 95 of a hundred such lots lie from `low` to `high`. */
export interface LearnedFigure {
  readonly value: number
  readonly low: number
  readonly high: number
  /** What the catalog says. */
  readonly book: number
}

export type LearnedFigures = Partial<Readonly<Record<WireMember, LearnedFigure>>>

/** What all readings of a plan teach. */
export interface Learned {
  /** The wires of which something was learned, with the figures of what really lies there and the spread that is left, by id. */
  readonly learnt: ReadonlyMap<string, Wire>
  /** Figures that a reading told something of, by wire. */
  readonly figures: ReadonlyMap<string, LearnedFigures>
  readonly odd: readonly Oddity[]
  /** What an instrument will show; null where nothing there gives such a reading. */
  readonly expect: (question: Question) => Expected | null
}

/** Where an instrument stands, what it looks at and how. */
export type Question = Omit<Reading, 'id' | 'value' | 'kind'>

export type Lengths = ReadonlyMap<LineId, MeasuredLine>
export type Splices = ReadonlyMap<LineId, number> | undefined

/** A catalog with what was learned of its wires; the very one that was given where nothing was. */
export const withLearned = (catalog: Catalog, { learnt }: Learned): Catalog =>
  learnt.size === 0 ? catalog : overlaid(catalog, learnt)

const overlaid = remembering(
  (catalog: Catalog, learnt: ReadonlyMap<string, Wire>): Catalog => ({
    ...catalog,
    wires: new Map([...catalog.wires, ...learnt]),
  }),
)

/** Learns from what was read: a piece of the program of its own, which a plan without readings does without. */
export type Learning = (plan: Plan, catalog: Catalog, measured: Lengths, splices?: Splices) => Learned

export const NOTHING_LEARNED: Learned = { learnt: new Map(), figures: new Map(), odd: [], expect: () => null }
