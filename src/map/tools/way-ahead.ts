import type { Position } from '../../geo/position'
import type { Lay } from '../../plan/plan'
import type { Way } from '../../plan/route-edits'
import type { Aim, Bench } from '../bench'
import { type LineDraft, withBend } from './line-draft'

/** Cells of a search that follows the pointer: coarse, and done in a few hundredths of a second. */
const MOST_CELLS = 40_000

interface Quest {
  readonly from: Position
  readonly to: Position
  readonly onFound: () => void
}

/** Seeks the cheapest way to the pointer while it moves: one search at a time, then the one for where it is by then. */
export function wayAhead({ store }: Bench) {
  let found: { readonly from: Position; readonly way: Way } | null = null
  let isSeeking = false
  let next: Quest | null = null

  const seek = async (quest: Quest): Promise<void> => {
    const groundWorker = store.groundWorker.peek()
    if (!groundWorker) return
    if (isSeeking) {
      next = quest
      return
    }
    isSeeking = true
    const { from, to, onFound } = quest
    const hazards = [...store.settled.peek().hazards.values()]
    const weights = store.routeWeights.peek()
    const result = await groundWorker
      .suggestRoute({ from, to, hazards, weights, mostCells: MOST_CELLS })
      .catch(() => undefined)
    isSeeking = false
    if (result?.ok) {
      found = { from, way: result.value }
      onFound()
    }
    const waiting = next
    next = null
    if (waiting) await seek(waiting)
  }

  return {
    seek: (quest: Quest): void => void seek(quest),
    /** With the shift key held, the line as it is suggested to go on from its last place; else as it is. */
    along: (draft: LineDraft, last: Position, { adding }: Aim): { draft: LineDraft; lay?: Lay } =>
      adding && found?.from === last
        ? { draft: withWay(draft, found.way), lay: found.way.lays.at(-1)! }
        : { draft },
  }
}

/** The line drawn along a way, up to the leg that reaches its end. */
const withWay = (draft: LineDraft, { bends, lays }: Way): LineDraft =>
  bends.reduce((longer, bend, i) => withBend(longer, bend, lays[i]!), draft)
