import { bad, ok, type Problem, type Result } from '../problem'
import { MARK } from '../schema/exact-members'
import { numberWords } from '../schema/limit'
import { jsonFault } from './json-fault'

/** Longest text that is read, in characters: a plan of 1,000 stations takes about 2 million. */
const MOST_CHARACTERS = 50_000_000

/** Deepest nesting that is read; a plan of its own needs eight. */
const MOST_LEVELS = 100

/** JSON text to a value. Every fault of the text is told with its line and column. */
export function parseJson(text: string): Result<unknown> {
  if (text.length > MOST_CHARACTERS) {
    const message = `The file has ${numberWords(text.length)} characters, more than the ${numberWords(MOST_CHARACTERS)} that a plan may have: choose a plan file.`
    return bad({ code: 'too-long', at: 'file', message })
  }
  const json = text.startsWith('\uFEFF') ? text.slice(1) : text
  if (json.trim() === '') {
    return bad({ code: 'not-json', at: 'file', message: 'The file is empty: choose a plan file.' })
  }
  const stranger = json.indexOf(MARK)
  if (stranger >= 0 || /\\ufdd0/i.test(json)) {
    const message = 'The text holds U+FDD0, which is no character: take it out.'
    return bad({ code: 'not-json', at: stranger < 0 ? 'file' : placeIn(json, stranger), message })
  }
  const deep = depthFault(json)
  if (deep) return bad(deep)
  try {
    return ok(JSON.parse(json))
  } catch {
    const { offset, wanted } = jsonFault(json)
    const found = offset < json.length ? charWords(json, offset) : 'the end of the file'
    const message = `This is not JSON: ${found} stands where ${wanted} should. Mend the text there, or choose a plan file.`
    return bad({ code: 'not-json', at: placeIn(json, offset), message })
  }
}

/** JSON.parse stands any depth, but what writes a value back does not. */
function depthFault(json: string): Problem | undefined {
  let level = 0
  let quoted = false
  for (let i = 0; i < json.length; i++) {
    const char = json.charCodeAt(i)
    if (quoted) {
      if (char === BACKSLASH) i++
      else if (char === QUOTE) quoted = false
    } else if (char === QUOTE) quoted = true
    else if (char === BRACKET || char === BRACE) {
      if (++level > MOST_LEVELS) {
        const message = `Brackets are nested deeper than ${MOST_LEVELS} levels here, and no plan is: choose a plan file.`
        return { code: 'too-deep', at: placeIn(json, i), message }
      }
    } else if (char === BRACKET_END || char === BRACE_END) level--
  }
  return undefined
}

const [QUOTE, BACKSLASH, BRACKET, BRACKET_END, BRACE, BRACE_END] = [...'"\\[]{}'].map((char) =>
  char.charCodeAt(0),
) as [number, number, number, number, number, number]

function placeIn(json: string, offset: number): string {
  const before = json.slice(0, offset).split('\n')
  return `line ${before.length}, column ${before.at(-1)!.length + 1}`
}

function charWords(json: string, offset: number): string {
  const char = String.fromCodePoint(json.codePointAt(offset)!)
  if (char === '\n') return 'the end of the line'
  return /[\p{L}\p{N}\p{P}\p{S}]/u.test(char) ? `“${char}”` : 'a character that is no text'
}
