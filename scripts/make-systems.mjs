/**
 * Writes src/files/systems/epsg-systems.txt from the EPSG dataset as PROJ keeps it (Debian packages proj-bin and sqlite3; PROJ 9.1.1, EPSG
 * 10.076): `node scripts/make-systems.mjs [proj.db]`. Each line is a code and a definition in the manner of PROJ. It takes some minutes.
 */
import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import proj4 from 'proj4'

const [database = '/usr/share/proj/proj.db'] = process.argv.slice(2)

/** Systems that agree with WGS 84 to two metres, less than any shift here is good to. */
const AS_WGS84 = [4326, 4979, 4258, 4269, 4283, 7844, 4167, 4674, 4612]
/** By how much a turn is multiplied to be seconds of arc, by the EPSG code of its unit. */
const TO_SECONDS = { 9101: 648000 / Math.PI, 9104: 1, 9109: 0.648 / Math.PI, 9113: 0.324 }
/** By how much a scale is multiplied to be parts per million. */
const TO_PPM = { 9201: 1e6, 9202: 1 }
const COORDINATE_FRAME = 9607

const rows = (sql) =>
  JSON.parse(execFileSync('sqlite3', ['-json', database, sql], { encoding: 'utf8', maxBuffer: 1e9 }) || '[]')

const EXTENT = (
  kind,
) => `JOIN usage u ON u.object_table_name = '${kind}' AND u.object_auth_name = o.auth_name AND u.object_code = o.code
  JOIN extent e ON e.auth_name = u.extent_auth_name AND e.code = u.extent_code`
const SIDES = 'e.west_lon west, e.south_lat south, e.east_lon east, e.north_lat north'

const systems = [
  ...rows(
    `SELECT o.code, o.geodetic_crs_code base, ${SIDES} FROM projected_crs o ${EXTENT('projected_crs')} WHERE o.auth_name = 'EPSG'`,
  ),
  ...rows(
    `SELECT o.code, o.code base, ${SIDES} FROM geodetic_crs o ${EXTENT('geodetic_crs')} WHERE o.auth_name = 'EPSG' AND o.type = 'geographic 2D'`,
  ),
]
const shifts = rows(`SELECT o.*, ${SIDES} FROM helmert_transformation o ${EXTENT('helmert_transformation')}
  WHERE o.auth_name = 'EPSG' AND o.deprecated = 0 AND o.method_code IN (9603, 9606, 9607) AND o.target_crs_code IN (${AS_WGS84})`)

/** How much of one stretch of the globe another covers, 0…1. */
function covered(inner, outer) {
  const width = (s) => (s.east >= s.west ? s.east - s.west : s.east - s.west + 360)
  const across = [-360, 0, 360].map(
    (turn) =>
      Math.min(inner.west + width(inner), outer.west + turn + width(outer)) -
      Math.max(inner.west, outer.west + turn),
  )
  const up = Math.min(inner.north, outer.north) - Math.max(inner.south, outer.south)
  return (Math.max(0, ...across) * Math.max(0, up)) / (width(inner) * (inner.north - inner.south) || 1)
}

/** `+towgs84=…` of the shift that covers most of where a system is used, the most accurate of those; undefined for none. */
function shiftOf(system) {
  const [best] = shifts
    .filter(({ source_crs_code }) => source_crs_code === system.base)
    .map((shift) => ({ shift, part: Math.round(covered(system, shift) * 20) }))
    .sort((a, b) => b.part - a.part || a.shift.accuracy - b.shift.accuracy || b.shift.code - a.shift.code)
  if (!best || best.part === 0) return undefined
  const {
    tx,
    ty,
    tz,
    rx,
    ry,
    rz,
    rotation_uom_code,
    scale_difference,
    scale_difference_uom_code,
    method_code,
  } = best.shift
  const moved = [tx, ty, tz]
  if (rx === null) return `+towgs84=${moved}`
  const sense = method_code === COORDINATE_FRAME ? -1 : 1
  const turned = [rx, ry, rz].map((r) => Number((sense * r * TO_SECONDS[rotation_uom_code]).toPrecision(9)))
  return `+towgs84=${[...moved, ...turned, scale_difference * TO_PPM[scale_difference_uom_code]]}`
}

/** ` +accuracy=…` of the shift that a definition has, m; nothing where it moves nothing. */
function accuracyWords(system, definition) {
  const [x, y, z, ...turns] = /\+towgs84=(\S+)/.exec(definition)?.[1].split(',').map(Number) ?? [0, 0, 0]
  if ([x, y, z, ...turns].every((each) => each === 0)) return ''
  const [best] = shifts
    .filter(
      ({ source_crs_code, tx, ty, tz }) =>
        source_crs_code === system.base && tx === x && ty === y && tz === z,
    )
    .map((shift) => ({ shift, part: Math.round(covered(system, shift) * 20) }))
    .sort((a, b) => b.part - a.part || a.shift.accuracy - b.shift.accuracy)
  return typeof best?.shift.accuracy === 'number' ? ` +accuracy=${best.shift.accuracy}` : ''
}

function definitionOf(code) {
  const said = execFileSync('projinfo', ['-q', '-o', 'PROJ', `EPSG:${code}`], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  })
  return said.trim().replace(/ \+(no_defs|type=crs|units=m)(?= |$)/g, '')
}

const lines = []
const without = []
for (const system of systems.sort((a, b) => a.code - b.code)) {
  let definition
  try {
    definition = definitionOf(system.code)
  } catch {
    continue
  }
  // Axes that point south or west: what a picture in such a system means is not settled among programs.
  if (!definition.startsWith('+proj=') || definition.includes('+axis=')) continue
  const isModern = /\+(ellps=(GRS80|WGS84)|datum=(WGS84|NAD83))/.test(definition)
  // Where only one shift comes into question PROJ says it itself.
  const own = /\+towgs84=\S+/.exec(definition)?.[0]
  const shift = own ?? shiftOf(system) ?? (isModern ? '+towgs84=0,0,0' : undefined)
  if (!shift) {
    without.push(system.code)
    continue
  }
  definition = `${definition.replace(/\+datum=NAD83/, '+ellps=GRS80').replace(/\+datum=NAD27/, '+ellps=clrk66')}${own || definition.includes('datum=WGS84') ? '' : ` ${shift}`}`
  if (comesBack(definition, system))
    lines.push(`${system.code} ${definition}${accuracyWords(system, definition)}`)
}
writeFileSync(
  'src/files/systems/epsg-systems.txt',
  `${[...new Map(lines.map((line) => [line.split(' ')[0], line])).values()].join('\n')}\n`,
)
console.log(`${lines.length} systems; no shift to WGS 84 for ${without.length}`)

/** Whether the library knows the projection, and brings the middle of where it is used there and back. */
function comesBack(definition, { west, south, east, north }) {
  try {
    const system = proj4(definition)
    const lonDeg = west <= east ? (west + east) / 2 : (west + east + 360) / 2
    const place = [lonDeg > 180 ? lonDeg - 360 : lonDeg, (north + south) / 2]
    const [lon, lat] = system.inverse(system.forward(place))
    return Math.hypot(((lon - place[0] + 540) % 360) - 180, lat - place[1]) < 1e-5
  } catch {
    return false
  }
}
