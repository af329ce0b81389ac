import { pictureOf } from '../../figure/code-picture'
import { lineCode, planCode } from '../../files/carry/paper-code'
import { neighboursOf } from '../../files/carry/plan-part'
import type { LineId } from '../../plan/id'
import type { Line } from '../../plan/plan'
import type { SheetCode } from '../layout/sheet-code'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'

/** A symbol of 105 modules a side: with its white edge each is 0.336 mm wide on 38 mm, which a telephone reads from a hand's breadth away (common practice). */
const MOST_VERSION = 22
/** Letters that such a symbol holds at the lowest level of error correction: ISO/IEC 18004, table 7. */
const MOST_LETTERS = 1003

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
    code.withCrossed ? '.' : `; what ${always.length > 0 ? 'they cross' : 'the line crosses'} is not in it.`,
  ]
  return paperCode(code.text, `Opens ${own} in the program, for a camera`, words.join(''))
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
