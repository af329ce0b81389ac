import type { Problem } from '../problem'
import { placeOf } from '../schema/faults'
import { valueWords } from '../schema/limit'
import { MOST_FAULTS } from '../schema/schema'

/** From so many names on they are looked up, not gone through: most objects of a plan have three. */
const MANY_NAMES = 12

/** The names of one object so far. */
class Names {
  readonly #few: string[] = []
  #all: Set<string> | undefined

  has(name: string): boolean {
    return this.#all ? this.#all.has(name) : this.#few.includes(name)
  }

  add(name: string): void {
    if (this.#all) this.#all.add(name)
    else if (this.#few.push(name) === MANY_NAMES) this.#all = new Set(this.#few)
  }
}

/** An object or a list that is open where the text is being read. */
interface Open {
  /** Names that the object has so far; undefined for a list. */
  readonly names: Names | undefined
  /** The member, or the index, that is being read. */
  at: string | number
  /** A name comes next, not a value. */
  awaitsName: boolean
}

const [QUOTE, BACKSLASH, COMMA, BRACKET, BRACKET_END, BRACE, BRACE_END] = [...'"\\,[]{}'].map((char) =>
  char.charCodeAt(0),
) as [number, number, number, number, number, number, number]

/**
 * Tells of names that an object has twice. Of the two values JSON keeps the last without a word, and half of what the file
 * says would be lost. The text must be sound JSON.
 */
export function repeatedNames(json: string, faults: Problem[]): void {
  const open: Open[] = []
  let inner: Open | undefined
  // Character by character: a search for the next mark takes three times as long, for there is one every ten characters.
  for (let i = 0; i < json.length && faults.length <= MOST_FAULTS; i++) {
    const char = json.charCodeAt(i)
    if (char === QUOTE) {
      const end = endOfString(json, i + 1)
      if (inner?.names && inner.awaitsName) {
        const name = nameIn(json, i, end)
        inner.at = name
        inner.awaitsName = false
        if (inner.names.has(name)) faults.push(repeated(open))
        inner.names.add(name)
      }
      i = end - 1
    } else if (char === COMMA) {
      if (typeof inner?.at === 'number') inner.at++
      else if (inner) inner.awaitsName = true
    } else if (char === BRACE) {
      inner = { names: new Names(), at: '', awaitsName: true }
      open.push(inner)
    } else if (char === BRACKET) {
      inner = { names: undefined, at: 0, awaitsName: false }
      open.push(inner)
    } else if (char === BRACE_END || char === BRACKET_END) {
      open.pop()
      inner = open.at(-1)
    }
  }
}

/** The string between two quotes; most have nothing in them that must be read. */
function nameIn(json: string, start: number, end: number): string {
  const plain = json.slice(start + 1, end - 1)
  return plain.includes('\\') ? (JSON.parse(json.slice(start, end)) as string) : plain
}

/** Just behind the quote that ends a string. */
function endOfString(json: string, start: number): number {
  for (let i = start; i < json.length; i++) {
    const char = json.charCodeAt(i)
    if (char === QUOTE) return i + 1
    if (char === BACKSLASH) i++
  }
  return json.length
}

function repeated(open: readonly Open[]): Problem {
  const at = open.reduce(
    (place, { at }) => (typeof at === 'number' ? `${place}[${at}]` : placeOf(place, at)),
    '',
  )
  const name = valueWords(open.at(-1)?.at)
  const message = `The name ${name} stands twice in one object: keep one of the two.`
  return { code: 'repeated-name', at, message }
}
