import { loadOtherSystems } from '../../geo/other-system'
import { type GridCrs, projectionOf } from '../../geo/projection'

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

/** The system of an EPSG code, ready to be reckoned with; undefined where it is not known. */
export async function crsOfCode(code: number): Promise<GridCrs | undefined> {
  if (GEOGRAPHIC_CODES.has(code)) return { kind: 'geographic' }
  if (WEB_MERCATOR_CODES.has(code)) return { kind: 'web-mercator' }
  const utm = UTM_CODES.find(({ first, last }) => code >= first && code <= last)
  if (utm) return { kind: 'utm', zone: utm.zone + code - utm.first, south: utm.south }
  const { systemOfCode } = await import('./epsg-systems')
  return crsBy(await systemOfCode(code))
}

/** The system of a definition in the manner of PROJ, ready to be reckoned with; undefined where there is none. */
export async function crsBy(definition: string | undefined): Promise<GridCrs | undefined> {
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
