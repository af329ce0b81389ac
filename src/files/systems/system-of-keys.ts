import { systemOfCode } from './epsg-systems'

/** What a GeoTIFF says about where it lies; key numbers from OGC 19-008r4, GeoTIFF 1.1. */
export type GeoKeys = Readonly<Partial<Record<string, unknown>>>

/** How PROJ calls what a key of GeoTIFF says. */
type Terms = readonly (readonly [term: string, ...keys: readonly string[]])[]

const ORIGIN: Terms = [
  ['lat_0', 'ProjNatOriginLatGeoKey', 'ProjCenterLatGeoKey', 'ProjFalseOriginLatGeoKey'],
  ['lon_0', 'ProjNatOriginLongGeoKey', 'ProjCenterLongGeoKey', 'ProjFalseOriginLongGeoKey'],
]
const SCALE: Terms = [['k_0', 'ProjScaleAtNatOriginGeoKey', 'ProjScaleAtCenterGeoKey']]
const FALSE: Terms = [
  ['x_0', 'ProjFalseEastingGeoKey', 'ProjFalseOriginEastingGeoKey', 'ProjCenterEastingGeoKey'],
  ['y_0', 'ProjFalseNorthingGeoKey', 'ProjFalseOriginNorthingGeoKey', 'ProjCenterNorthingGeoKey'],
]
const PARALLELS: Terms = [
  ['lat_1', 'ProjStdParallel1GeoKey'],
  ['lat_2', 'ProjStdParallel2GeoKey'],
]
/** The pole's own latitude is where the scale holds: PROJ asks for that parallel by another name. */
const POLE: Terms = [
  ['lat_ts', 'ProjNatOriginLatGeoKey', 'ProjStdParallel1GeoKey'],
  ['lon_0', 'ProjStraightVertPoleLongGeoKey', 'ProjNatOriginLongGeoKey'],
]

/** Methods by their number in ProjCoordTransGeoKey. Source: GeoTIFF 1.0 (1995), section 6.3.3.3; OGC 19-008r4, annex C. */
const METHODS: Readonly<Record<number, readonly [proj: string, terms: Terms]>> = {
  1: ['tmerc', [...ORIGIN, ...SCALE, ...FALSE]],
  7: ['merc', [...ORIGIN, ['lat_ts', 'ProjStdParallel1GeoKey'], ...SCALE, ...FALSE]],
  8: ['lcc', [...ORIGIN, ...PARALLELS, ...FALSE]],
  9: ['lcc', [['lat_1', 'ProjNatOriginLatGeoKey', 'ProjCenterLatGeoKey'], ...ORIGIN, ...SCALE, ...FALSE]],
  10: ['laea', [...ORIGIN, ...FALSE]],
  11: ['aea', [...ORIGIN, ...PARALLELS, ...FALSE]],
  12: ['aeqd', [...ORIGIN, ...FALSE]],
  13: ['eqdc', [...ORIGIN, ...PARALLELS, ...FALSE]],
  14: ['stere', [...ORIGIN, ...SCALE, ...FALSE]],
  15: ['stere', [...POLE, ...SCALE, ...FALSE]],
  16: ['sterea', [...ORIGIN, ...SCALE, ...FALSE]],
  17: ['eqc', [...ORIGIN, ['lat_ts', 'ProjStdParallel1GeoKey'], ...FALSE]],
  18: ['cass', [...ORIGIN, ...FALSE]],
  22: ['poly', [...ORIGIN, ...FALSE]],
  24: ['sinu', [...ORIGIN, ...FALSE]],
  28: ['cea', [...ORIGIN, ['lat_ts', 'ProjStdParallel1GeoKey'], ...FALSE]],
}

/** Metres of a linear unit by its EPSG code. Source: EPSG dataset, units of measure. */
const UNIT_M: Readonly<Record<number, number>> = {
  9001: 1,
  9002: 0.3048,
  9003: 1200 / 3937,
  9005: 0.3047972654,
  9036: 1000,
}
/** Semi-major axis, m, and inverse flattening of ellipsoids by their EPSG codes. Source: EPSG dataset. */
const ELLIPSOIDS: Readonly<Record<number, readonly [aM: number, inverse: number]>> = {
  7001: [6377563.396, 299.3249646],
  7004: [6377397.155, 299.1528128],
  7008: [6378206.4, 294.978698213898],
  7019: [6378137, 298.257222101],
  7022: [6378388, 297],
  7024: [6378245, 298.3],
  7030: [6378137, 298.257223563],
}
const DEGREE = 9102
/** The polar stereographic method. */
const POLAR = 15

/**
 * A projected system that a GeoTIFF describes by its own keys, in the manner of PROJ; undefined where a key is missing or not known.
 *
 * Source: OGC 19-008r4, GeoTIFF 1.1, sections 7.4 and 7.5.
 */
export async function systemOfKeys(keys: GeoKeys): Promise<string | undefined> {
  const number = Number(keys.ProjCoordTransGeoKey)
  const method = METHODS[number]
  const datum = await datumOf(keys)
  const unitM = UNIT_M[Number(keys.ProjLinearUnitsGeoKey ?? 9001)] ?? positive(keys.ProjLinearUnitSizeGeoKey)
  const inDegrees = Number(keys.GeogAngularUnitsGeoKey ?? DEGREE) === DEGREE
  if (!method || !datum || !unitM || !inDegrees) return undefined
  const [proj, terms] = method
  const isLength = (term: string) => term === 'x_0' || term === 'y_0'
  const said = terms.flatMap(([term, ...names]) => {
    const value = names.map((name) => keys[name]).find((each) => typeof each === 'number')
    // PROJ has false origins in metres whatever the unit of the grid.
    return value === undefined ? [] : [`+${term}=${isLength(term) ? (value as number) * unitM : value}`]
  })
  const pole = number === POLAR ? [`+lat_0=${poleOf(keys)}`] : []
  const meridianDeg = Number(keys.GeogPrimeMeridianLongGeoKey ?? 0)
  const others = [
    ...(meridianDeg === 0 || datum.includes('+pm=') ? [] : [`+pm=${meridianDeg}`]),
    ...(unitM === 1 ? [] : [`+to_meter=${unitM}`]),
  ]
  return [`+proj=${proj}`, ...pole, ...said, datum, ...others].join(' ')
}

const poleOf = (keys: GeoKeys): number =>
  Number(keys.ProjNatOriginLatGeoKey ?? keys.ProjStdParallel1GeoKey ?? 90) < 0 ? -90 : 90

const positive = (value: unknown): number | undefined =>
  typeof value === 'number' && value > 0 && Number.isFinite(value) ? value : undefined

/** Ellipsoid and shift to WGS 84: of the geographic system that is named, or of the ellipsoid alone. */
async function datumOf(keys: GeoKeys): Promise<string | undefined> {
  const known = await systemOfCode(Number(keys.GeographicTypeGeoKey))
  if (known) return known.replace('+proj=longlat ', '')
  const byCode = ELLIPSOIDS[Number(keys.GeogEllipsoidGeoKey)]
  const aM = positive(keys.GeogSemiMajorAxisGeoKey) ?? byCode?.[0]
  const inverse = positive(keys.GeogInvFlatteningGeoKey) ?? byCode?.[1]
  if (!aM || !inverse) return undefined
  const shift = shiftOf(keys.GeogTOWGS84GeoKey)
  // Where nothing says how an old datum lies to WGS 84, a place could be hundreds of metres off.
  const isModern = Math.abs(aM - 6378137) < 0.01 && Math.abs(inverse - 298.2572) < 1e-3
  return shift || isModern ? `+a=${aM} +rf=${inverse} +towgs84=${shift ?? '0,0,0'}` : undefined
}

/** Three or seven figures. Source: OGC 19-008r4, section 7.5.4, "GeogTOWGS84GeoKey", as GDAL writes it. */
function shiftOf(value: unknown): string | undefined {
  const figures =
    ArrayBuffer.isView(value) || Array.isArray(value) ? Array.from(value as ArrayLike<number>) : []
  return [3, 7].includes(figures.length) && figures.every(Number.isFinite) ? figures.join(',') : undefined
}
