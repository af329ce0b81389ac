import { removeHazard, removeHazardVertex } from '../../plan/hazard-edits'
import { removeBend } from '../../plan/leg-edits'
import { removeLine } from '../../plan/line-edits'
import { lineName } from '../../plan/plan'
import { removeStation } from '../../plan/station-edits'
import type { Bench } from '../bench'
import { stationWords } from './describe'

/** Removes the bend or the corner that is picked, else what is selected. Says whether there was anything. */
export function removePicked({ store, picked, say }: Bench): boolean {
  const plan = store.plan.peek()
  const hand = picked.peek()
  if (hand?.kind === 'bend' && plan.lines.get(hand.line)?.bends[hand.index]) {
    picked.value = null
    store.edit((now) => removeBend(now, hand.line, hand.index))
    say('Bend removed')
    return true
  }
  if (hand?.kind === 'corner') {
    const before = store.settled.peek()
    store.edit((now) => removeHazardVertex(now, hand.hazard, hand.index))
    if (store.settled.peek() !== before) {
      picked.value = null
      say('Corner removed')
      return true
    }
  }
  const selection = store.selection.peek()
  if (selection?.kind === 'station') {
    const lost = [...plan.lines.values()].filter(
      ({ from, to }) => from === selection.id || to === selection.id,
    ).length
    store.selection.value = null
    store.edit((now) => removeStation(now, selection.id))
    say(
      `${stationWords(plan, selection.id)} removed${lost ? ` with ${lost === 1 ? 'its line' : `its ${lost} lines`}` : ''}`,
    )
    return true
  }
  if (selection?.kind === 'line') {
    const line = plan.lines.get(selection.id)
    store.selection.value = null
    store.edit((now) => removeLine(now, selection.id))
    say(`Line ${line ? lineName(plan, line) : ''} removed`)
    return true
  }
  if (selection?.kind === 'hazard') {
    picked.value = null
    store.selection.value = null
    store.edit((now) => removeHazard(now, selection.id))
    say('Hazard removed')
    return true
  }
  return false
}
