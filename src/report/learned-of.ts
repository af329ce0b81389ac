import { BUILT_IN } from '../catalog/built-in'
import { type Catalog, mergeCatalogs } from '../catalog/catalog'
import { learnedFrom } from '../field/learned'
import { type Learned, withLearned } from '../field/learned-figures'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { laidSplices } from './circuit-network'

type Lengths = ReadonlyMap<LineId, MeasuredLine>

/** What a plan's own readings teach of the wire that lies there. */
export function learnedOf(plan: Plan, measured: Lengths): Learned {
  const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
  return learnedFrom(plan, catalog, measured, plan.field && laidSplices(plan, catalog, measured))
}

/** The catalog of a plan with the figures of the wire that really lies there, as far as they were read. */
export const laidCatalog = (plan: Plan, measured: Lengths, learned = learnedOf(plan, measured)): Catalog =>
  withLearned(mergeCatalogs(BUILT_IN, plan.catalog), learned)
