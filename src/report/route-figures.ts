import { BUILT_IN } from '../catalog/built-in'
import { mergeCatalogs } from '../catalog/catalog'
import { crossingsOf } from '../hazard/crossings'
import { hoursOfLine } from '../materials/hours'
import { layingOf } from '../materials/work-allowances'
import { measureLine } from '../measure/measure-line'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import type { GridGround } from '../terrain/ground-from-grids'
import type { Caution } from './caution'
import { hazardCautions } from './hazard-cautions'
import { lineProfile } from './line-profile'

/** What one way of leading a line comes to. */
export interface RouteFigures {
  readonly groundM: number
  readonly wireM: number
  /** All that goes up on the way; undefined where the ground is not known. */
  readonly climbM: number | undefined
  readonly bends: number
  readonly cautions: readonly Caution[]
  /** Hours to lay it, crossings included, splices not. */
  readonly hours: number
}

/** The figures of one line of a plan, to weigh one way for it against another. */
export function routeFigures(plan: Plan, id: LineId, ground: GridGround | undefined): RouteFigures {
  const line = plan.lines.get(id)
  if (!line) throw new Error(`no line ${id} in the plan`)
  const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
  const measured = measureLine(plan, line, ground)
  const alone = { ...plan, lines: new Map([[id, line]]) }
  const crossings = crossingsOf(plan, line)
  const profile = lineProfile(
    plan,
    line,
    { legs: measured.legs, crossings },
    catalog.wires.get(line.wire),
    ground,
  )
  return {
    groundM: measured.groundM,
    wireM: measured.wireM,
    climbM: profile?.ground.climbM,
    bends: line.bends.length,
    cautions: hazardCautions(alone, new Map([[id, measured]]), [crossings], catalog, ground),
    hours: hoursOfLine(measured, line.pairs, 0, crossings, layingOf(plan)).totalH,
  }
}
