import { BaseDecoder } from 'geotiff'
import { decode } from 'lerc'
import { BlockTooLong, inflateBounded } from './bounded-bytes'
import { blockBytes, type Parameters } from './tiff-block'
import { unpackZstd } from './tiff-zstd'

const [PLAIN, DEFLATED, ZSTANDARD] = [0, 1, 2]
const MAGIC = 'Lerc2 '

/**
 * Unpacks LERC 2, of one band a block, with or without another packing around it. A cell that is masked comes as NaN where floats are kept.
 *
 * Source: Esri, Limited Error Raster Compression, format of version 2 to 4; LercParameters as GDAL's driver GTiff writes them.
 */
export class BoundedLerc extends BaseDecoder {
  override async decodeBlock(packed: ArrayBuffer): Promise<ArrayBufferLike> {
    const most = blockBytes(this.parameters)
    const around = (this.parameters as Parameters & { LercParameters?: ArrayLike<number> })
      .LercParameters?.[1]
    // A blob may be longer than the cells that it holds where these do not pack: by its head and a mask at most.
    const room = most * 2 + 4096
    let blob = new Uint8Array(packed)
    if (around === DEFLATED) blob = await inflateBounded(blob, room)
    else if (around === ZSTANDARD) blob = new Uint8Array(await unpackZstd(blob, room))
    else if (around !== undefined && around !== PLAIN)
      throw new RangeError('LERC in a packing that is not known')
    const cells = cellsOf(blob)
    if (cells > most) throw new BlockTooLong()
    const { pixels, mask } = decode(blob.slice().buffer, {})
    const [band] = pixels
    if (!band || band.byteLength > most) throw new BlockTooLong()
    if (mask && (band instanceof Float32Array || band instanceof Float64Array))
      for (let i = 0; i < band.length; i++) if (!mask[i]) band[i] = Number.NaN
    return band.buffer
  }
}

/** Rows by columns, as the blob's head has them: the library reserves room for so many. */
function cellsOf(blob: Uint8Array): number {
  const view = new DataView(blob.buffer, blob.byteOffset, blob.byteLength)
  if (blob.length < 30 || new TextDecoder('latin1').decode(blob.subarray(0, 6)) !== MAGIC)
    throw new RangeError('no LERC 2')
  const at = view.getInt32(6, true) >= 3 ? 14 : 10
  const [rows, columns] = [view.getInt32(at, true), view.getInt32(at + 4, true)]
  if (!(rows > 0 && columns > 0)) throw new RangeError('LERC of no cells')
  return rows * columns
}
