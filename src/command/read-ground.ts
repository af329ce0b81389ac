import { bytesFrom } from '../files/byte-source'
import type { Extent } from '../terrain/elevation-grid'
import type { GridGround } from '../terrain/ground-from-grids'
import { type CommandIo, readBytes, refusalOf } from './command-io'

/** The ground that elevation files hold within an extent; undefined where none is named. */
export async function readGround(
  paths: readonly string[],
  extent: Extent | undefined,
  io: CommandIo,
): Promise<GridGround | undefined> {
  if (paths.length === 0) return undefined
  const { groundFromFiles } = await import('../files/elevation-files')
  const sources = await Promise.all(
    paths.map(async (path) => bytesFrom(path, new Uint8Array(await readBytes(path, io)))),
  )
  const result = await groundFromFiles(sources, extent)
  if (!result.ok) throw refusalOf(result.problems)
  return result.value
}
