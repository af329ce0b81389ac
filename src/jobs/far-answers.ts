import type { CircuitId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { bestPlaces, type SpotFound, type Thing } from '../report/best-places'
import { type FarFound, type FarQuestion, farShades } from '../report/far-shades'
import type { ElevationGrid } from '../terrain/elevation-grid'
import { type GridGround, groundFromGrids } from '../terrain/ground-from-grids'
import { readyForGrids } from '../terrain/ready-grids'
import type { Tell } from './protocol'

interface PlacesQuestion {
  readonly plan: Plan
  readonly circuit: CircuitId
  readonly thing: Thing
}

let ground: GridGround | undefined

/** How far a line could go, and where on a circuit a thing would do best, over the ground as it is known. */
export const FAR_JOBS = {
  grids: async (grids: readonly ElevationGrid[]) => {
    await readyForGrids(grids)
    ground = grids.length > 0 ? groundFromGrids(grids) : undefined
  },
  places: ({ plan, circuit, thing }: PlacesQuestion): readonly SpotFound[] =>
    bestPlaces(plan, circuit, thing, ground),
  shades: (question: FarQuestion, tell: Tell<FarFound>): FarFound =>
    farShades(question, ground, (news) => tell.part(news)),
}
