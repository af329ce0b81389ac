import { isObject, type Members } from './schema'

/**
 * JSON text read into JavaScript loses the last digits of long whole numbers, and puts names that are numbers before all others.
 * Members that this program does not know must come back as they were: so a text that has such things is read a second time with
 * these put into texts and names with a mark, and what is kept untouched is taken from there.
 */

/** No character: it stands in no text that is meant to be read. */
export const MARK = '\uFDD0'

// Only from a number's first digit on: else each of its digits would be tried anew.
const NEEDS_MARKS = /(?<!\d)\d{16}|\d[eE]\+?\d{3}|"\d+"\s*:/
/** A string with the colon after it, or a number. */
const TOKEN = /"(?:[^"\\]|\\.)*"(\s*:)?|-?\d[\d.eE+-]*/g

/** What each object and list of a file is in the text with marks. */
const twins = new WeakMap<object, object>()

const isExact = (number: string): boolean =>
  Number.isFinite(Number(number)) &&
  (!/^-?\d+$/.test(number) || Number.isSafeInteger(Number(number)) || String(Number(number)) === number)

const marked = (json: string): string =>
  json.replace(TOKEN, (token, colon: string | undefined) => {
    if (token[0] !== '"') return isExact(token) ? token : `"${MARK}${token}"`
    return colon && /^"\d/.test(token) ? `"${MARK}${token.slice(1)}` : token
  })

/** Remembers of a value that was read from a text what the value itself cannot hold. */
export function rememberExact(value: unknown, json: string): void {
  if (NEEDS_MARKS.test(json)) pair(value, JSON.parse(marked(json)))
}

function pair(value: unknown, twin: unknown): void {
  if (typeof value !== 'object' || value === null || typeof twin !== 'object' || twin === null) return
  twins.set(value, twin)
  for (const [name, inner] of Object.entries(twin)) pair((value as Members)[plainName(name)], inner)
}

/** A member's own name. */
export const plainName = (name: string): string => (name.startsWith(MARK) ? name.slice(1) : name)

/** The value to be kept for a value from a file: with its marks, where it has any. */
export const exact = <T>(value: T): T =>
  typeof value === 'object' && value !== null ? ((twins.get(value) as T | undefined) ?? value) : value

/** The members of an object as they are to be kept. */
export const exactEntries = (value: object): [name: string, value: unknown][] =>
  Object.entries(isObject(value) ? exact(value) : value)

/** JSON text with its marks taken out. */
export const unmarked = (json: string): string =>
  json.includes(MARK)
    ? json.replace(
        new RegExp(`"${MARK}(?:([^"]*)"(?!:)|)`, 'g'),
        (_, number: string | undefined) => number ?? '"',
      )
    : json

/** The members beside the known ones as they are to be kept, or undefined where there are none. */
export function unknownOf(value: Members, known: Members, besides = ''): Members | undefined {
  const isKnown = (name: string) => name === besides || Object.hasOwn(known, name)
  for (const name in value) {
    if (isKnown(name)) continue
    return Object.fromEntries(exactEntries(value).filter(([each]) => !isKnown(plainName(each))))
  }
  return undefined
}
