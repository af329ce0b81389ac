import { loadOtherSystems } from '../geo/other-system'
import { type GridCrs, projectionOf } from '../geo/projection'
import type { GridTransform } from '../terrain/elevation-grid'
import type { GeoKeys } from './systems/system-of-keys'

const MODEL_PROJECTED = 1
const MODEL_GEOGRAPHIC = 2
/** WGS 84, ETRS89, NAD83 and their kin: within two metres of each other, less than any cell here. */
const GEOGRAPHIC_CODES = new Set([4326, 4979, 4258, 4937, 4269, 4152, 4617, 4283, 7844, 4167])
const WEB_MERCATOR_CODES = new Set([3857, 3785, 900913])
/** First and last EPSG code of UTM zones, the zone of the first, and the hemisphere. */
const UTM_CODES = [
  { first: 32601, last: 32660, zone: 1, south: false },
  { first: 32701, last: 32760, zone: 1, south: true },
  { first: 25828, last: 25838, zone: 28, south: false },
  { first: 26901, last: 26923, zone: 1, south: false },
] as const

/** 32767 stands for a system that the file describes itself. */
const isEpsg = (code: number): boolean => code > 0 && code < 32767

/** The grid's coordinate system, ready to be reckoned with, or a clause that says why it cannot be read. */
export async function crsOf(keys: GeoKeys | null): Promise<GridCrs | string> {
  const model = keys?.GTModelTypeGeoKey
  if (model === MODEL_GEOGRAPHIC) {
    const code = Number(keys?.GeographicTypeGeoKey)
    if (GEOGRAPHIC_CODES.has(code)) return { kind: 'geographic' }
    if (!isEpsg(code)) return 'lies in a geographic system of its own making'
    return (await otherByCode(code)) ?? `lies in the geographic system EPSG:${code}, which is not known here`
  }
  if (model === MODEL_PROJECTED) {
    const code = Number(keys?.ProjectedCSTypeGeoKey)
    if (WEB_MERCATOR_CODES.has(code)) return { kind: 'web-mercator' }
    const utm = UTM_CODES.find(({ first, last }) => code >= first && code <= last)
    if (utm) return { kind: 'utm', zone: utm.zone + code - utm.first, south: utm.south }
    const known = isEpsg(code) ? await otherByCode(code) : undefined
    if (known) return known
    const { systemOfKeys } = await import('./systems/system-of-keys')
    const own = await otherBy(await systemOfKeys(keys!))
    if (own) return own
    return isEpsg(code)
      ? `lies in the projected system EPSG:${code}, which is not known here`
      : 'lies in a projected system of its own making that cannot be followed'
  }
  return 'does not say where on the globe it lies'
}

async function otherByCode(code: number): Promise<GridCrs | undefined> {
  const { systemOfCode } = await import('./systems/epsg-systems')
  return otherBy(await systemOfCode(code))
}

/** The system, where it can be reckoned with. */
async function otherBy(definition: string | undefined): Promise<GridCrs | undefined> {
  if (!definition) return undefined
  await loadOtherSystems()
  const crs: GridCrs = { kind: 'other', definition }
  try {
    projectionOf(crs)
    return crs
  } catch {
    return undefined
  }
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
