import type { GridCrs } from '../geo/projection'
import type { GridTransform } from '../terrain/elevation-grid'
import { crsBy, crsOfCode } from './systems/crs-of-code'
import type { GeoKeys } from './systems/system-of-keys'

const MODEL_PROJECTED = 1
const MODEL_GEOGRAPHIC = 2
/** 32767 stands for a system that the file describes itself. */
const isEpsg = (code: number): boolean => code > 0 && code < 32767

/** The grid's coordinate system, ready to be reckoned with, or a clause that says why it cannot be read. */
export async function crsOf(keys: GeoKeys | null): Promise<GridCrs | string> {
  const model = keys?.GTModelTypeGeoKey
  if (model === MODEL_GEOGRAPHIC) {
    const code = Number(keys?.GeographicTypeGeoKey)
    if (!isEpsg(code)) return 'lies in a geographic system of its own making'
    return (await crsOfCode(code)) ?? `lies in the geographic system EPSG:${code}, which is not known here`
  }
  if (model === MODEL_PROJECTED) {
    const code = Number(keys?.ProjectedCSTypeGeoKey)
    const known = code === 32767 ? undefined : await crsOfCode(code)
    if (known) return known
    const { systemOfKeys } = await import('./systems/system-of-keys')
    const own = await crsBy(await systemOfKeys(keys!))
    if (own) return own
    return isEpsg(code)
      ? `lies in the projected system EPSG:${code}, which is not known here`
      : 'lies in a projected system of its own making that cannot be followed'
  }
  return 'does not say where on the globe it lies'
}

/**
 * The transform to cell centres from the model tags, or null where they give none.
 *
 * A tie point and a scale, or a 4 × 4 matrix; where a pixel is an area its centre is half a pixel in.
 * Source: OGC 19-008r4, sections 7.1 and B.6.
 */
export function transformOf(
  tags: {
    scale?: ArrayLike<number> | undefined
    tiePoint?: ArrayLike<number> | undefined
    matrix?: ArrayLike<number> | undefined
  },
  pixelIsPoint: boolean,
): GridTransform | null {
  const { scale, tiePoint, matrix } = tags
  const half = pixelIsPoint ? 0 : 0.5
  let raw: GridTransform
  if (matrix && matrix.length === 16) {
    const at = (i: number) => matrix[i]!
    raw = { x0: at(3), xPerColumn: at(0), xPerRow: at(1), y0: at(7), yPerColumn: at(4), yPerRow: at(5) }
  } else if (scale && scale.length >= 2 && tiePoint && tiePoint.length === 6) {
    const [dx, dy] = [scale[0]!, -scale[1]!]
    raw = {
      x0: tiePoint[3]! - tiePoint[0]! * dx,
      xPerColumn: dx,
      xPerRow: 0,
      y0: tiePoint[4]! - tiePoint[1]! * dy,
      yPerColumn: 0,
      yPerRow: dy,
    }
  } else return null
  const determinant = raw.xPerColumn * raw.yPerRow - raw.xPerRow * raw.yPerColumn
  if (!Number.isFinite(determinant) || determinant === 0 || !Number.isFinite(raw.x0 + raw.y0)) return null
  return {
    ...raw,
    x0: raw.x0 + half * (raw.xPerColumn + raw.xPerRow),
    y0: raw.y0 + half * (raw.yPerColumn + raw.yPerRow),
  }
}
