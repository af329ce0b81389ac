import type { ReadonlySignal } from '@preact/signals'
import { measureLine } from '../../measure/measure-line'
import type { Lay, Plan } from '../../plan/plan'
import { effect } from '../../state/steady-effect'
import type { Store } from '../../state/store'
import { farInShort } from '../../words/far-words'
import { tongueOf } from '../../words/tongue'
import type { Bench, Step } from '../bench'
import { drawLine, type LineDraft, type LineMake, positionAt } from './line-draft'

/** A line that has no end yet is thought to go on so far to the north, degrees. */
const SOMEWHERE_DEG = 0.001

/** While a line is drawn, asks how far it could go on from its last place, if that is wished for. Returns the undoing of itself. */
export function askHowFar(
  { store, lay }: Bench,
  draft: ReadonlySignal<LineDraft | null>,
  makeOf: (plan: Plan, lay: Lay) => LineMake,
): () => void {
  return effect(() => {
    const now = store.farWhileDrawing.value ? draft.value : null
    const settled = store.settled.value
    if (!now) {
      store.farDrawn.value = null
      return
    }
    const from = now.bends.at(-1) ?? positionAt(settled, now.start)
    const position = [from[0], from[1] + (from[1] > 0 ? -SOMEWHERE_DEG : SOMEWHERE_DEG)] as const
    const plan = drawLine(settled, now, { kind: 'ground', position }, makeOf(settled, lay.value))
    const line = plan.lines.get(now.lineId)
    const laid = line ? measureLine(plan, line, store.ground.value).legs.slice(0, -1) : []
    const laidM = laid.reduce((sum, leg) => sum + leg.laidM, 0)
    store.farDrawn.value = line ? { plan, line: line.id, from, laidM } : null
  })
}

/** What the hint says of it, as far as it is known; empty where it is not wished for. */
export function howFarWords({ far, farDrawn, units }: Store): string {
  const now = far.value
  if (!farDrawn.value || !now?.found) return ''
  return farInShort(now.found, tongueOf(now.plan, units.value))
}

/** The button of the hint that shows and hides it. */
export const stepOfHowFar = ({ farWhileDrawing }: Store): Step => ({
  words: farWhileDrawing.value ? 'Hide how far' : 'How far?',
  act: () => {
    farWhileDrawing.value = !farWhileDrawing.peek()
  },
})
