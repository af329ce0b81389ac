import { deflateSync, Inflate } from 'fflate'
import type { Plan } from '../../plan/plan'
import { bad, type Result } from '../../problem'
import { formatPlan } from '../format-plan'
import { joined } from '../joined-bytes'
import { parsePlanBytes } from '../parse-plan'

/** A plan's file may be so large once it is unpacked, bytes: more is a slip or a trick. */
const MOST_BYTES = 32 * 1024 * 1024
/** So much is unpacked at a time, so that what grows beyond all measure is stopped early. */
const STEP_BYTES = 4096

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
  const pieces: Uint8Array[] = []
  let length = 0
  let isWhole = false
  const inflate = new Inflate(dictionary ? { dictionary } : {}, (piece, isLast) => {
    pieces.push(piece)
    length += piece.length
    isWhole = isLast
  })
  try {
    for (let at = 0; at < packed.length && length <= MOST_BYTES; at += STEP_BYTES)
      inflate.push(packed.subarray(at, at + STEP_BYTES), at + STEP_BYTES >= packed.length)
  } catch {
    return bad(DAMAGED)
  }
  if (length > MOST_BYTES)
    return bad({
      code: 'too-large',
      at: '',
      message: 'What was handed on unpacks to more than 32 MB: that is no plan. Ask for it as a file.',
    })
  if (!isWhole) return bad(DAMAGED)
  return parsePlanBytes(joined(pieces))
}

const DAMAGED = {
  code: 'damaged',
  at: '',
  message: 'What was handed on has not come whole. Ask for it once more, or as a file.',
} as const
