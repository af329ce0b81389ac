import { HAZARDS } from '../hazard/kinds'
import { isolated } from '../isolated'
import type { TagReason } from '../measure/line-tags'
import { LAY_WORDS } from './plan-words'
import type { Tongue } from './tongue'

type Code = TagReason['code']
type ReasonOf<C extends Code> = Extract<TagReason, { readonly code: C }>

const SAY: { readonly [C in Code]: (reason: ReasonOf<C>, say: Tongue) => string } = {
  end: ({ station, branches }, { name }) => `${name(station)}${branches ? ', lines branch' : ''}`,
  'lay-changes': ({ from, to }) => `${LAY_WORDS[from]} to ${LAY_WORDS[to]}`,
  crossing: ({ hazard, name }) =>
    name ? `${HAZARDS[hazard].word}: ${isolated(name)}` : HAZARDS[hazard].word,
  'test-point': () => 'test point',
  'on-the-way': () => 'on the way',
}

/** Why a tag hangs where it does. */
export const tagReason = (reason: TagReason, say: Tongue): string =>
  (SAY[reason.code] as (reason: TagReason, say: Tongue) => string)(reason, say)

/** Every reason of a tag, the most telling first. */
export const tagReasons = (reasons: readonly TagReason[], say: Tongue): string =>
  reasons.map((reason) => tagReason(reason, say)).join(', ')
