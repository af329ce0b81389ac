import type { Wire } from '../catalog/wire'
import type { MeasuredLine } from '../measure/measured'
import type { Line, Plan } from '../plan/plan'
import type { Ground } from '../terrain/ground'

/** One line with all that its cautions are judged by. */
export interface JudgedLine {
  readonly plan: Plan
  readonly line: Line
  readonly measured: MeasuredLine
  readonly wire: Wire | undefined
  readonly ground: Ground | undefined
}
