import type { Plan } from '../plan/plan'
import type { ElevationGrid } from '../terrain/elevation-grid'
import { formatPlan } from './format-plan'
import { PACKED_ENDING } from './packed-ending'

/** The member of a plan file that its elevations travel in: a program that does not know it keeps it. */
const MEMBER = 'elevations'

/** The text of a plan file that takes its elevations along. */
export async function formatWithElevations(plan: Plan, grids: readonly ElevationGrid[]): Promise<string> {
  const { packGrid } = await import('./packed-grid')
  const packed = await Promise.all(grids.map(packGrid))
  const { unknown = {} } = plan
  return formatPlan({ ...plan, unknown: { ...unknown, file: { ...unknown.file, [MEMBER]: packed } } })
}

/** One grid that came in a plan file, as a file by itself. */
export interface CarriedGrid {
  readonly name: string
  readonly text: string
}

/** A plan without the elevations that its file has brought, and these: what is kept with every edit must be small. */
export function takeElevationsOut(plan: Plan): {
  readonly plan: Plan
  readonly grids: readonly CarriedGrid[]
} {
  const carried = plan.unknown?.file?.[MEMBER]
  if (!Array.isArray(carried)) return { plan, grids: [] }
  const { [MEMBER]: _, ...file } = plan.unknown!.file!
  return {
    plan: { ...plan, unknown: { ...plan.unknown, file } },
    grids: carried.map((grid: { readonly name?: unknown } | null, i) => ({
      name: `${typeof grid?.name === 'string' ? grid.name : `elevations ${i + 1}`}${PACKED_ENDING}`,
      text: JSON.stringify(grid),
    })),
  }
}
