import { loadOtherSystems } from '../geo/other-system'
import type { ElevationGrid } from './elevation-grid'

/** Loads what grids need before ground is made of them: whoever gets grids from elsewhere waits for it. */
export async function readyForGrids(grids: readonly ElevationGrid[]): Promise<void> {
  if (grids.some(({ crs }) => crs.kind === 'other')) await loadOtherSystems()
}
