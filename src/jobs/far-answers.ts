import { type FarFound, type FarQuestion, farShades } from '../report/far-shades'
import type { ElevationGrid } from '../terrain/elevation-grid'
import { type GridGround, groundFromGrids } from '../terrain/ground-from-grids'
import type { Tell } from './protocol'

let ground: GridGround | undefined

/** How far a line could go, over the ground as it is known. */
export const FAR_JOBS = {
  grids: (grids: readonly ElevationGrid[]) => {
    ground = grids.length > 0 ? groundFromGrids(grids) : undefined
  },
  shades: (question: FarQuestion, tell: Tell<FarFound>): FarFound =>
    farShades(question, ground, (news) => tell.part(news)),
}
