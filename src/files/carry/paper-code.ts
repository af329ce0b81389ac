import type { LineId } from '../../plan/id'
import type { Line, Plan } from '../../plan/plan'
import { toBase64Url } from './base64-url'
import { MARK, PART } from './carried'
import { packPlan } from './pack-plan'
import { neighboursOf, partOf } from './plan-part'
import { thinnedLine } from './thinned-line'
import { WORDS_OF_PLANS } from './words-of-plans'

/** The text of a code on paper: an address that a telephone opens, or its fragment alone where the program has none that others can reach. */
const textOf = (program: string, plan: Plan, partOfPlan = ''): string =>
  `${program.replace(/#.*$/s, '')}#${MARK}${toBase64Url(packPlan(plan, WORDS_OF_PLANS))}${partOfPlan && PART + partOfPlan}`

/** A whole plan as the text of a code; undefined where it takes more letters. */
export function planCode(program: string, plan: Plan, mostLetters: number): string | undefined {
  const text = textOf(program, plan)
  return text.length <= mostLetters ? text : undefined
}

/** A line as the text of a code, and what of it found room. */
export interface LineCode {
  readonly text: string
  readonly others: readonly LineId[]
  readonly withCrossed: boolean
  /** Its way lies within so many metres of what the code holds, where it has bends left out. */
  readonly thinnedM?: number
}

/** How far bends may be left out, m, the least that helps first. */
const THINNED_M = [5, 10, 20, 50, 100, 200, 500] as const

interface LineCodeWish {
  readonly fingerprint: string
  readonly mostLetters: number
  /** Lines that must be in it, too. */
  readonly always?: readonly LineId[]
  /** No other lines are wanted. */
  readonly isAlone?: boolean
}

/**
 * A line with as many of its neighbours as find room in a code, and with what it crosses where that does; without any notes, and at last with
 * bends left out. Undefined where even that takes more letters.
 */
export function lineCode(program: string, plan: Plan, id: LineId, wish: LineCodeWish): LineCode | undefined {
  const { fingerprint, mostLetters, always = [], isAlone = false } = wish
  const line = plan.lines.get(id)!
  const codeOf = (
    others: readonly LineId[],
    withCrossed: boolean,
    withNotes = true,
  ): LineCode | undefined => {
    const text = textOf(program, partOf(plan, { line, others, withCrossed, withNotes }), fingerprint)
    return text.length <= mostLetters ? { text, others, withCrossed } : undefined
  }
  let best =
    codeOf(always, true) ??
    codeOf(always, true, false) ??
    codeOf(always, false) ??
    codeOf(always, false, false)
  best ??= always.length === 0 ? thinnedCode(program, plan, line, wish) : undefined
  if (!best?.withCrossed || isAlone) return best
  for (const other of neighboursOf(plan, line).filter((each) => !always.includes(each)))
    best = codeOf([...best.others, other], true) ?? best
  return best
}

/** A line alone with as few of its bends left out as make it find room. */
function thinnedCode(
  program: string,
  plan: Plan,
  line: Line,
  { fingerprint, mostLetters }: LineCodeWish,
): LineCode | undefined {
  for (const thinnedM of THINNED_M) {
    const thin = thinnedLine(plan, line, thinnedM)
    const part = partOf(plan, { line: thin, others: [], withCrossed: false, withNotes: false })
    const text = textOf(program, part, fingerprint)
    if (text.length <= mostLetters) return { text, others: [], withCrossed: false, thinnedM }
  }
  return undefined
}
