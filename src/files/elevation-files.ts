import { bad, type Problem, type Result } from '../problem'
import type { ElevationGrid, Extent } from '../terrain/elevation-grid'
import { type GridGround, groundFromGrids } from '../terrain/ground-from-grids'
import type { ByteSource, Reading } from './byte-source'
import { PACKED_ENDING } from './packed-ending'

/** Reads an elevation grid of any kind that is known, by its name. Null where no cell of it lies in the extent. */
export async function readElevationGrid(
  source: ByteSource,
  extent?: Extent,
  reading?: Reading,
): Promise<Result<ElevationGrid | null>> {
  try {
    if (/\.hgt$/i.test(source.name)) {
      const { readHgtGrid } = await import('./hgt-grid')
      return await readHgtGrid(source, extent, reading)
    }
    if (source.name.endsWith(PACKED_ENDING)) {
      const { readPackedGrid } = await import('./packed-grid')
      return await readPackedGrid(source, extent)
    }
    const { readGeotiffGrid } = await import('./geotiff-grid')
    return await readGeotiffGrid(source, extent, reading)
  } catch (error) {
    reading?.signal?.throwIfAborted()
    const why = error instanceof Error ? error.message : String(error)
    return bad({ code: 'unreadable', at: source.name, message: `The file cannot be read (${why}).` })
  }
}

/** Ground from every file together, the finest grid first, or every file's fault. Files that lie elsewhere add nothing. */
export async function groundFromFiles(
  sources: readonly ByteSource[],
  extent?: Extent,
  reading?: Reading,
): Promise<Result<GridGround>> {
  const grids: ElevationGrid[] = []
  const problems: Problem[] = []
  for (const source of sources) {
    const result = await readElevationGrid(source, extent, reading)
    if (!result.ok) problems.push(...result.problems)
    else if (result.value) grids.push(result.value)
  }
  return problems.length > 0 ? bad(...problems) : { ok: true, value: groundFromGrids(grids) }
}
