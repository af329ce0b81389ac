import type { ElevationGrid } from '../terrain/elevation-grid'

/** The grids that a worker of the ground keeps: told once, and again to one that was started anew. */
export function knownGrids() {
  let grids: readonly ElevationGrid[] = []
  let known: readonly ElevationGrid[] = []
  return {
    set: (next: readonly ElevationGrid[]) => {
      grids = next
    },
    /** What a worker must be told before it works on the ground; undefined for nothing. */
    prepare: (isNew: boolean) => {
      if (isNew) known = []
      if (known === grids || known.length + grids.length === 0) return undefined
      known = grids
      return { kind: 'grids', question: grids } as const
    },
  }
}
