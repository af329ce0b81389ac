import Papa from 'papaparse'
import { parsePlace } from '../../geo/parse-place'
import type { Position } from '../../geo/position'
import type { Places } from '../../plan/places'
import type { Result } from '../../problem'
import { textOf } from '../text-bytes'
import { PlaceCollector, refused } from './places'

/** What a column may be called, in the languages that a spreadsheet speaks; compared without case, accents and marks. */
const HEADS = {
  name: /^(name|station|id|label|title|nom|nombre|bezeichnung|ort|punkt)$/,
  note: /^(note|notes|desc|description|comment|remark|bemerkung|nota|remarque)$/,
  latitude: /^(lat|latitude|breite|latitud|latitudine|y|north|northdeg|latdeg)$/,
  longitude: /^(lon|lng|long|longitude|lange|laenge|longitud|longitudine|x|east|eastdeg|londeg)$/,
  elevation: /^(ele|elev|elevation|elevationm|alt|altitude|height|hohe|hoehe|z)$/,
  position: /^(position|place|coordinates|coords|mgrs|utm|gridreference|grid|location|koordinaten)$/,
  line: /^(line|track|route|path|linie|ligne)$/,
} as const
type Head = keyof typeof HEADS

const plainHead = (head: string) =>
  head
    .normalize('NFD')
    .toLowerCase()
    .replaceAll(/[^a-z]/g, '')

/** A word that was kept from being a formula by an apostrophe is the word without it. */
const plainWord = (text: string) => (/^'[=+\-@\t\r]/.test(text) ? text.slice(1) : text).trim()

/**
 * Named points of a table, and ways where rows name a line: a column each for latitude and longitude, or one for the position in any usual
 * writing. Separator and decimal sign are found out.
 */
export function readCsv(bytes: Uint8Array): Result<Places> {
  const text = textOf(bytes)
  if (!text.ok) return text
  const { data } = Papa.parse<string[]>(text.value.replace(/^\uFEFF/, ''), {
    skipEmptyLines: 'greedy',
    delimitersToGuess: [',', ';', '\t', '|'],
  })
  const [heads = [], ...rows] = data
  const columns = new Map<Head, number>()
  for (const [index, head] of heads.entries()) {
    const found = (Object.keys(HEADS) as Head[]).find((key) => HEADS[key].test(plainHead(head)))
    if (found && !columns.has(found)) columns.set(found, index)
  }
  const hasDegrees = columns.has('latitude') && columns.has('longitude')
  if (!hasDegrees && !columns.has('position')) {
    return refused(
      'no-columns',
      'row 1',
      'The first row must name the columns: "name", and "latitude" with "longitude", or "position".',
    )
  }

  const places = new PlaceCollector()
  const lines = new Map<string, Position[]>()
  for (const [index, row] of rows.entries()) {
    if (places.isFull) break
    const at = `row ${index + 2}`
    const cell = (head: Head) => plainWord(row[columns.get(head) ?? -1] ?? '')
    const elevation = cell('elevation')
    const elevationM = elevation === '' ? undefined : decimal(elevation)
    const degrees = hasDegrees ? degreesOf(cell('longitude'), cell('latitude')) : degreesAt(cell('position'))
    const position = places.position(degrees[0], degrees[1], elevationM, at)
    const line = cell('line')
    if (line === '') places.point(cell('name'), cell('note'), position)
    else if (position) {
      const known = lines.get(line)
      if (known) known.push(position)
      else lines.set(line, [position])
    }
  }
  for (const [name, positions] of lines) places.path(name, '', positions)
  return places.result()
}

/** A number with a point, or with the comma that many countries write. */
const decimal = (text: string): number => {
  const plain = text.replaceAll(/[\s°']/g, '')
  return /^[-+]?\d+(,\d+)?$/.test(plain) ? Number(plain.replace(',', '.')) : Number(plain || Number.NaN)
}

const NOWHERE: readonly [number, number] = [Number.NaN, Number.NaN]

/** Plain degrees, or each with its own letters, minutes and seconds. */
function degreesOf(longitude: string, latitude: string): readonly [lonDeg: number, latDeg: number] {
  const [lonDeg, latDeg] = [decimal(longitude), decimal(latitude)]
  return Number.isFinite(lonDeg) && Number.isFinite(latDeg)
    ? [lonDeg, latDeg]
    : degreesAt(`${latitude}, ${longitude}`)
}

function degreesAt(text: string): readonly [lonDeg: number, latDeg: number] {
  const place = parsePlace(text)
  return place.ok ? place.value : NOWHERE
}
