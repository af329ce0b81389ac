import { gzipSync } from 'node:zlib'
import type { TilePlace } from '../../../src/files/maps/map-archive'

export interface WrittenTile extends TilePlace {
  readonly bytes: Uint8Array
}

interface Written {
  readonly tiles: readonly WrittenTile[]
  /** 1 vector, 2 PNG. */
  readonly type: 1 | 2
  /** Gzip around each tile. */
  readonly areTilesPacked?: boolean
  readonly metadata?: object
  readonly bounds?: readonly [west: number, south: number, east: number, north: number]
  /** Entries of one leaf directory; all in the root where absent. */
  readonly leaf?: number
}

/** Place along Hilbert's curve, counted over all zooms. PMTiles 3, section 2: by its own words, not the package's code. */
export function hilbertId({ zoom, column, row }: TilePlace): number {
  let before = 0
  for (let z = 0; z < zoom; z++) before += 4 ** z
  let [x, y, d] = [column, row, 0]
  for (let s = 2 ** zoom / 2; s >= 1; s /= 2) {
    const [rx, ry] = [(x & s) > 0 ? 1 : 0, (y & s) > 0 ? 1 : 0]
    d += s * s * ((3 * rx) ^ ry)
    if (ry === 0) {
      if (rx === 1) [x, y] = [s - 1 - x, s - 1 - y]
      ;[x, y] = [y, x]
    }
  }
  return before + d
}

const varint = (n: number): number[] => {
  const bytes: number[] = []
  let rest = n
  for (; rest >= 128; rest = Math.floor(rest / 128)) bytes.push((rest % 128) + 128)
  return [...bytes, rest]
}

interface Entry {
  readonly id: number
  readonly run: number
  readonly length: number
  readonly offset: number
}

/** A directory: count, steps of ids, run lengths, lengths, offsets. PMTiles 3, section 4. */
const directory = (entries: readonly Entry[]): Buffer =>
  gzipSync(
    Uint8Array.from([
      ...varint(entries.length),
      ...entries.flatMap(({ id }, i) => varint(id - (entries[i - 1]?.id ?? 0))),
      ...entries.flatMap(({ run }) => varint(run)),
      ...entries.flatMap(({ length }) => varint(length)),
      ...entries.flatMap(({ offset }) => varint(offset + 1)),
    ]),
  )

/** A PMTiles archive of version 3, written by the specification's own words. */
export function writtenPmtiles({
  tiles,
  type,
  areTilesPacked = false,
  metadata = {},
  bounds = [-180, -85, 180, 85],
  leaf,
}: Written): Uint8Array<ArrayBuffer> {
  const data: Uint8Array[] = []
  let end = 0
  const entries = tiles
    .map((tile) => ({ id: hilbertId(tile), bytes: areTilesPacked ? gzipSync(tile.bytes) : tile.bytes }))
    .sort((a, b) => a.id - b.id)
    .map(({ id, bytes }): Entry => {
      data.push(bytes)
      end += bytes.length
      return { id, run: 1, length: bytes.length, offset: end - bytes.length }
    })
  const leaves: Buffer[] = []
  let leavesEnd = 0
  const rootEntries: Entry[] = leaf
    ? Array.from({ length: Math.ceil(entries.length / leaf) }, (_, i) => {
        const part = entries.slice(i * leaf, (i + 1) * leaf)
        const packed = directory(part)
        leaves.push(packed)
        leavesEnd += packed.length
        return { id: part[0]!.id, run: 0, length: packed.length, offset: leavesEnd - packed.length }
      })
    : entries
  const root = directory(rootEntries)
  const words = gzipSync(JSON.stringify(metadata))
  const HEADER = 127
  const head = Buffer.alloc(HEADER)
  head.write('PMTiles')
  head[7] = 3
  const at = [HEADER, HEADER + root.length, HEADER + root.length + words.length]
  const sections = [
    ...[at[0]!, root.length, at[1]!, words.length, at[2]!, leavesEnd, at[2]! + leavesEnd, end],
    ...[entries.length, entries.length, entries.length],
  ]
  for (const [i, value] of sections.entries()) head.writeBigUInt64LE(BigInt(value), 8 + 8 * i)
  const zooms = tiles.map(({ zoom }) => zoom)
  head[96] = 1
  // Directories are packed by gzip, and so may tiles be.
  head[97] = 2
  head[98] = areTilesPacked ? 2 : 1
  head[99] = type
  head[100] = Math.min(...zooms)
  head[101] = Math.max(...zooms)
  for (const [i, degrees] of bounds.entries()) head.writeInt32LE(Math.round(degrees * 1e7), 102 + 4 * i)
  return new Uint8Array(Buffer.concat([head, root, words, ...leaves, ...data]))
}
