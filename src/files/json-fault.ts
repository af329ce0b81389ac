/** Where a text stops being JSON, and what should stand there. */
export interface JsonFault {
  readonly offset: number
  readonly wanted: string
}

const SPACE = /[ \t\n\r]*/y
const SCALAR = /true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
type State = 'value' | 'first value' | 'name' | 'first name' | 'colon' | 'after'

const WANTED: Readonly<Record<State, string>> = {
  value: 'a value',
  'first value': 'a value or “]”',
  name: 'a name in quotes',
  'first name': 'a name in quotes or “}”',
  colon: '“:”',
  after: '“,” or the closing bracket',
}

const NAMES: ReadonlySet<State> = new Set<State>(['name', 'first name'])

/**
 * The first fault of a text that is not JSON. Engines word and place their own messages each in its way, some without a
 * place, so the text is read again. Without recursion, in one pass.
 *
 * Grammar: RFC 8259.
 */
export function jsonFault(json: string): JsonFault {
  const open: ('[' | '{')[] = []
  let state: State = 'value'
  let at = 0

  const skip = (pattern: RegExp): number => {
    pattern.lastIndex = at
    const length = pattern.exec(json)?.[0].length ?? 0
    at += length
    return length
  }

  for (;;) {
    skip(SPACE)
    const char = json[at]
    if (state === 'after' && open.length === 0) return { offset: at, wanted: 'the end of the file' }
    const fault = { offset: at, wanted: WANTED[state] }
    if (state === 'colon') {
      if (char !== ':') return fault
      at++
      state = 'value'
    } else if (state === 'after') {
      const inObject = open.at(-1) === '{'
      if (char === ',') state = inObject ? 'name' : 'value'
      else if (char === (inObject ? '}' : ']')) open.pop()
      else return { offset: at, wanted: inObject ? '“,” or “}”' : '“,” or “]”' }
      at++
    } else if ((state === 'first value' && char === ']') || (state === 'first name' && char === '}')) {
      open.pop()
      at++
      state = 'after'
    } else if (char === '"') {
      at = endOfString(json, at)
      if (json[at] === '\\') return escapeFault(json, at)
      if (json[at] !== '"') return { offset: at, wanted: 'the rest of a text, or its closing quote' }
      at++
      state = NAMES.has(state) ? 'colon' : 'after'
    } else if (NAMES.has(state)) return fault
    else if (char === '[' || char === '{') {
      open.push(char)
      at++
      state = char === '[' ? 'first value' : 'first name'
    } else if (skip(SCALAR) > 0) state = 'after'
    else return brokenWord(json, at) ?? fault
  }
}

/** Where one of the three words of JSON breaks that begins here. */
function brokenWord(json: string, start: number): JsonFault | undefined {
  const word = ['true', 'false', 'null'].find(([first]) => first === json[start])
  if (!word) return undefined
  let length = 1
  while (json[start + length] === word[length]) length++
  return { offset: start + length, wanted: `the rest of “${word}”` }
}

const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y

/** Where an escape breaks that begins here. */
function escapeFault(json: string, start: number): JsonFault {
  if (json[start + 1] !== 'u') return { offset: start, wanted: 'a sound escape' }
  let at = start + 2
  while (/[0-9a-fA-F]/.test(json[at] ?? '')) at++
  return { offset: at, wanted: 'the four digits, 0 to 9 or A to F, of an escape' }
}

/** As far as the string that opens here is sound: its closing quote, the end of the text, or what may not stand in it. */
function endOfString(json: string, start: number): number {
  let at = start + 1
  while (at < json.length && json[at] !== '"' && json.charCodeAt(at) >= 0x20) {
    if (json[at] !== '\\') {
      at++
      continue
    }
    ESCAPE.lastIndex = at
    const length = ESCAPE.exec(json)?.[0].length
    if (length === undefined) return at
    at += length
  }
  return at
}
