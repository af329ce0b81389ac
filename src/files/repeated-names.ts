import type { Problem } from '../problem'
import { placeOf } from '../schema/faults'
import { valueWords } from '../schema/limit'
import { MOST_FAULTS } from '../schema/schema'

/** An object or a list that is open where the text is being read. */
interface Open {
  /** Names that the object has so far; undefined for a list. */
  readonly names: Set<string> | undefined
  /** The member, or the index, that is being read. */
  at: string | number
  /** A name comes next, not a value. */
  awaitsName: boolean
}

const MARK = /[{}[\],"]/g
const STRING_END = /["\\]/g

/**
 * Tells of names that an object has twice. Of the two values JSON keeps the last without a word, and half of what the file
 * says would be lost. The text must be sound JSON.
 */
export function repeatedNames(json: string, faults: Problem[]): void {
  const open: Open[] = []
  MARK.lastIndex = 0
  for (let mark = MARK.exec(json); mark && faults.length <= MOST_FAULTS; mark = MARK.exec(json)) {
    const inner = open.at(-1)
    const char = mark[0]
    if (char === '{') open.push({ names: new Set(), at: '', awaitsName: true })
    else if (char === '[') open.push({ names: undefined, at: 0, awaitsName: false })
    else if (char === '}' || char === ']') open.pop()
    else if (char === ',') {
      if (typeof inner?.at === 'number') inner.at++
      else if (inner) inner.awaitsName = true
    } else {
      const end = endOfString(json, mark.index + 1)
      if (inner?.names && inner.awaitsName) {
        inner.at = JSON.parse(json.slice(mark.index, end)) as string
        inner.awaitsName = false
        if (inner.names.has(inner.at)) faults.push(repeated(open))
        inner.names.add(inner.at)
      }
      MARK.lastIndex = end
    }
  }
}

function endOfString(json: string, start: number): number {
  STRING_END.lastIndex = start
  for (let mark = STRING_END.exec(json); mark; mark = STRING_END.exec(json)) {
    if (mark[0] === '"') return mark.index + 1
    STRING_END.lastIndex = mark.index + 2
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
