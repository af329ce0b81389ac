import { pictureOf } from '../../figure/code-picture'
import { lineCode, planCode } from '../../files/carry/paper-code'
import { neighboursOf } from '../../files/carry/plan-part'
import type { LineId, StationId } from '../../plan/id'
import type { Line } from '../../plan/plan'
import { formatLengthM } from '../../words/units'
import type { SheetCode } from '../layout/sheet-code'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'

/** A symbol of 105 modules a side: with its white edge each is 0.336 mm wide on 38 mm, which a telephone reads from a hand's breadth away (common practice). */
const MOST_VERSION = 22
/** Letters that such a symbol holds at the lowest level of error correction: ISO/IEC 18004, table 7. */
const MOST_LETTERS = 1003

/** More lines of one station than this find room in no code. */
const MOST_AT_STATION = 6

/** A code, and the words that say what it opens. */
interface PaperCode extends SheetCode {
  readonly words: string
}

const paperCode = (text: string, label: string, words: string): PaperCode => ({
  picture: pictureOf(text, MOST_VERSION),
  label,
  words,
})

const numbers = (source: PaperSource, ids: readonly LineId[]) =>
  ids.map((id) => lineNumber(source, id)).join(', ')

/** A code that opens a line in the program, with others of its sheet, with what meets it and what it crosses; undefined for too many bends. */
export function codeOfLine(
  source: PaperSource,
  line: Line,
  sheetMates: readonly Line[] = [],
): PaperCode | undefined {
  const { plan, program, fingerprint } = source
  const always = sheetMates.map(({ id }) => id)
  const code = lineCode(program, plan, line.id, { fingerprint, mostLetters: MOST_LETTERS, always })
  if (!code) return undefined
  const isElse = (id: LineId) => !always.includes(id)
  const others = code.others.filter(isElse)
  const left = neighboursOf(plan, line).filter((id) => isElse(id) && !others.includes(id))
  const own = `line${always.length > 0 ? 's' : ''} ${[line.id, ...always].map((id) => lineNumber(source, id)).join(' and ')}`
  const words = [
    `The code opens ${own}${others.length > 0 ? ` with ${numbers(source, others)}` : ''} in the program`,
    left.length > 0 ? `; it has no room for ${numbers(source, left)}` : '',
    code.thinnedM === undefined
      ? ''
      : `, its way within ${formatLengthM(code.thinnedM, source.system)}, each leg as most of it lies`,
    code.withCrossed ? '.' : `; what ${always.length > 0 ? 'they cross' : 'the line crosses'} is not in it.`,
  ]
  return paperCode(code.text, `Opens ${own} in the program, for a camera`, words.join(''))
}

/** A code that opens the lines of a station, as many as find room; undefined where none ends there or none does. */
export function codeOfStation(source: PaperSource, station: StationId): PaperCode | undefined {
  const { plan, program, fingerprint } = source
  const all = [...plan.lines.values()].filter(({ from, to }) => from === station || to === station)
  for (let count = Math.min(all.length, MOST_AT_STATION); count > 0; count--) {
    const [first, ...others] = all.slice(0, count).map(({ id }) => id)
    const wish = { fingerprint, mostLetters: MOST_LETTERS, always: others, isAlone: true }
    const code = lineCode(program, plan, first!, wish)
    if (!code) continue
    const own = `line${others.length > 0 ? 's' : ''} ${numbers(source, [first!, ...others])}`
    const left =
      all.length > count
        ? `; it has no room for ${numbers(
            source,
            all.slice(count).map(({ id }) => id),
          )}`
        : ''
    return paperCode(code.text, `Opens ${own} in the program`, `The code opens ${own} in the program${left}.`)
  }
  return undefined
}

/** A code that opens the whole plan; undefined where it has no room in one. */
export function codeOfPlan({ plan, program }: PaperSource): PaperCode | undefined {
  const text = planCode(program, plan, MOST_LETTERS)
  return text === undefined
    ? undefined
    : paperCode(
        text,
        'Opens the plan in the program, for a camera',
        'The code opens the whole plan in the program.',
      )
}

/** A code that opens what the papers are made for: the one line, or the whole plan; undefined where it has no room in one. */
export function codeOfScope(source: PaperSource): PaperCode | undefined {
  const { plan, scope } = source
  const line = scope.kind === 'line' ? plan.lines.get(scope.line) : undefined
  return line ? codeOfLine(source, line) : codeOfPlan(source)
}
