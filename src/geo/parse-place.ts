import { toPoint } from 'mgrs'
import { bad, ok, type Result } from '../problem'
import { FALSE_NORTHING_M, hasUtm, lonLatFromUtm } from './utm'

const DEGREES = /^(\d+(?:\.\d+)?)(?:[°\s]+(\d+(?:\.\d+)?))?(?:['′\s]+(\d+(?:\.\d+)?))?["″'′°\s]*$/

const refused = bad({
  code: 'no-place',
  at: '',
  message:
    'Give latitude and longitude, as 47.2184 N 11.9051 E, a grid reference, as 32T PT 90812 32711, or UTM with its zone, as 32T 690812 5232711.',
})

const offGlobe = bad({
  code: 'no-place',
  at: '',
  message:
    'That is off the globe: latitude goes from 90 S to 90 N and comes first, longitude from 180 W to 180 E.',
})

/** A place as people write it: a military grid reference, UTM with its zone, or latitude and longitude in degrees, with minutes and seconds or without. */
export function parsePlace(text: string): Result<readonly [lonDeg: number, latDeg: number]> {
  const trimmed = bare(text.toUpperCase().replaceAll('−', '-'))
  return parseGridReference(trimmed) ?? parseUtm(trimmed) ?? parseLatLon(trimmed)
}

/** Without what other programs copy along with a pair: brackets, names of the two figures, a comma for the decimal point. */
function bare(text: string): string {
  const pair = text
    .replaceAll(/[()[\]{}]/g, ' ')
    .replaceAll(/\b(?:LATITUDE|LAT|LONGITUDE|LONG|LON|LNG|GEO)\b\s*[:=]?/g, ' ')
    .trim()
  const commas = pair.match(/\d,\d/g) ?? []
  // One comma parts the two figures; two, with something else between the figures, are decimal points.
  return commas.length === 2 && /\d,\d+[^\d,.]+[\s;]*-?\d+,\d/.test(pair)
    ? pair.replaceAll(/(\d),(\d)/g, '$1.$2')
    : pair
}

function parseGridReference(text: string): Result<readonly [number, number]> | undefined {
  const packed = text.replaceAll(/\s/g, '')
  if (!/^\d{1,2}[C-X][A-Z]{2}(\d\d)*$/.test(packed)) return undefined
  try {
    const [lonDeg, latDeg] = toPoint(packed)
    return Number.isFinite(lonDeg) && Number.isFinite(latDeg) ? ok([lonDeg, latDeg]) : refused
  } catch {
    return refused
  }
}

/** A zone with its band (`32T`), or with N or S set apart (`32 N`), then easting and northing in metres. */
const UTM =
  /^(?:UTM\s*)?(\d{1,2})(?:([C-HJ-NP-X])|\s*(NORTH|SOUTH|N|S))\s+(\d{6}(?:\.\d+)?)(?:\s*M?\s*E)?[\s,;]+(\d{1,7}(?:\.\d+)?)(?:\s*M?\s*N)?$/

function parseUtm(text: string): Result<readonly [number, number]> | undefined {
  const parts = UTM.exec(text)
  if (!parts) return undefined
  const [, zoneText, band, half] = parts
  const [zone, eastingM, writtenM] = [zoneText, parts[4], parts[5]].map(Number) as [number, number, number]
  // Bands from N on lie north of the equator.
  const isSouth = band ? band < 'N' : half!.startsWith('S')
  if (zone < 1 || zone > 60 || writtenM > FALSE_NORTHING_M) return refused
  const [lonDeg, latDeg] = lonLatFromUtm({
    zone,
    eastingM,
    northingM: isSouth ? writtenM - FALSE_NORTHING_M : writtenM,
  })
  return Number.isFinite(lonDeg) && hasUtm(latDeg) ? ok([lonDeg, latDeg]) : refused
}

/** Latitude comes first, unless the letters say otherwise. */
function parseLatLon(text: string): Result<readonly [number, number]> {
  const halves = halvesOf(text)
  if (!halves) return refused
  const [first, second] = halves.map(signedDegrees)
  if (first === undefined || second === undefined) return refused
  const swapped = /[EW]/.test(halves[0]) && /[NS]/.test(halves[1])
  const [latDeg, lonDeg] = swapped ? [second, first] : [first, second]
  if (Math.abs(latDeg) > 90 || Math.abs(lonDeg) > 180) return offGlobe
  return ok([lonDeg, latDeg])
}

/** Apart at the comma, else after or before the letters, else in the middle. */
function halvesOf(text: string): readonly [string, string] | undefined {
  const parts =
    splitInTwo(text, /[,;]\s*/) ??
    splitInTwo(text, /(?<=[NSEW])\s*(?=[-\d])/) ??
    splitInTwo(text, /(?<=\d["″'′°]?)\s*(?=[NSEW])/)
  if (parts) return parts
  const words = text.split(/\s+/)
  const middle = words.length / 2
  return words.length >= 2 && Number.isInteger(middle)
    ? [words.slice(0, middle).join(' '), words.slice(middle).join(' ')]
    : undefined
}

function splitInTwo(text: string, at: RegExp): readonly [string, string] | undefined {
  const parts = text.split(at).filter((part) => part !== '')
  return parts.length === 2 ? [parts[0]!, parts[1]!] : undefined
}

function signedDegrees(text: string): number | undefined {
  const letters = text.replaceAll(/[^NSEW]/g, '')
  const minus = /^\s*[NSEW]?\s*-/.test(text)
  if (letters.length > 1 || (letters && minus)) return undefined
  const match = DEGREES.exec(
    text
      .replaceAll(/[NSEW]/g, '')
      .replace('-', '')
      .trim(),
  )
  if (!match) return undefined
  const [degrees, minutes, seconds] = [match[1], match[2] ?? '0', match[3] ?? '0'].map(Number)
  if (minutes! >= 60 || seconds! >= 60) return undefined
  const size = degrees! + minutes! / 60 + seconds! / 3600
  return minus || letters === 'S' || letters === 'W' ? -size : size
}
