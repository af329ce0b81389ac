import { deflateSync } from 'fflate'
import type { Plan } from '../../plan/plan'
import { bad, type Result } from '../../problem'
import { formatPlan } from '../format-plan'
import { inflatedUpTo } from '../inflated'
import { parsePlanBytes } from '../parse-plan'

/** A plan's file may be so large once it is unpacked, bytes: more is a slip or a trick. */
const MOST_BYTES = 32 * 1024 * 1024

/** The text of a JSON file without the white space between its parts. */
const withoutSpace = (json: string): string =>
  json.replace(/("(?:[^"\\]|\\.)*")|\s+/g, (_all, text = '') => text)

/**
 * A plan's file as small as it gets: without white space, deflated (RFC 1951).
 *
 * @param dictionary what both ends know, so that it need not be carried
 */
export const packPlan = (plan: Plan, dictionary?: Uint8Array): Uint8Array =>
  deflateSync(new TextEncoder().encode(withoutSpace(formatPlan(plan))), {
    level: 9,
    ...(dictionary && { dictionary }),
  })

/** What `packPlan` made with the same dictionary, read as any plan file is. */
export function unpackPlan(packed: Uint8Array, dictionary?: Uint8Array): Result<Plan> {
  const plain = inflatedUpTo(packed, MOST_BYTES, dictionary)
  if (plain === undefined)
    return bad({
      code: 'too-large',
      at: '',
      message: 'What was handed on unpacks to more than 32 MB: that is no plan. Ask for it as a file.',
    })
  return plain ? parsePlanBytes(plain) : bad(DAMAGED)
}

const DAMAGED = {
  code: 'damaged',
  at: '',
  message: 'What was handed on has not come whole. Ask for it once more, or as a file.',
} as const
