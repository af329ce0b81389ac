import type { LayingAllowances } from '../catalog/laying-rates'
import { type Learned, type Learning, NOTHING_LEARNED } from '../field/learned-figures'
import type { LineField } from '../field/line-field'
import type { NetHours } from '../materials/hours'
import type { leftToDo } from '../materials/left-to-do'
import type { SpoolPlan } from '../materials/spool-plan'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'

type Lengths = ReadonlyMap<LineId, MeasuredLine>

/**
 * What a report makes of the records of a plan: a piece of the program of its own, which a plan without any does without. The first
 * screen must not wait for it.
 */
export interface FieldWork {
  readonly learn: Learning
  /** Spools as they were really used. */
  readonly usedSpools: (plan: Plan, planned: SpoolPlan, measured: Lengths) => SpoolPlan
  readonly lineFields: (plan: Plan, learned: Learned) => ReadonlyMap<LineId, LineField>
  /** The hours at the rates of this crew. */
  readonly ownHours: (
    plan: Plan,
    measured: Lengths,
    laying: LayingAllowances,
    hoursAt: (laying: LayingAllowances) => NetHours,
  ) => NetHours
  readonly leftToDo: typeof leftToDo | null
}

/** A report that looks at no record. */
export const NO_FIELD_WORK: FieldWork = {
  learn: () => NOTHING_LEARNED,
  usedSpools: (_, planned) => planned,
  lineFields: () => new Map(),
  ownHours: (_plan, _measured, laying, hoursAt) => hoursAt(laying),
  leftToDo: null,
}
