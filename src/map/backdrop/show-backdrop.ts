import type { Bench } from '../bench'
import { showBackMaps } from './show-back-maps'
import { showCoast } from './show-coast'
import { showGrid } from './show-grid'
import { showTerrain } from './show-terrain'

/** Draws the country beneath the net, and the grid on it. Returns how to take it away. */
export function showBackdrop(bench: Bench): () => void {
  const parts = [showCoast(bench.view), showGrid(bench.view), showTerrain(bench), showBackMaps(bench)]
  return () => {
    for (const remove of parts) remove()
  }
}
