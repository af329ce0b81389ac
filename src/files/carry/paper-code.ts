import type { LineId } from '../../plan/id'
import type { Plan } from '../../plan/plan'
import { toBase64Url } from './base64-url'
import { MARK, PART } from './carried'
import { packPlan } from './pack-plan'
import { neighboursOf, partOf } from './plan-part'
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
}

/**
 * A line with as many of its neighbours as find room in a code, and with what it crosses where that does; without any notes at last. Undefined
 * where even the line alone takes more letters.
 */
export function lineCode(
  program: string,
  plan: Plan,
  id: LineId,
  {
    fingerprint,
    mostLetters,
    always = [],
  }: {
    readonly fingerprint: string
    readonly mostLetters: number
    /** Lines that must be in it, too. */
    readonly always?: readonly LineId[]
  },
): LineCode | undefined {
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
  if (!best?.withCrossed) return best
  for (const other of neighboursOf(plan, line).filter((each) => !always.includes(each)))
    best = codeOf([...best.others, other], true) ?? best
  return best
}
