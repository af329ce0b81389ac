import { removeHazardVertex } from '../../plan/hazard-edits'
import { removeBend } from '../../plan/leg-edits'
import { deleteHazard, deleteLine, deleteSeveral, deleteStation } from '../../state/removals'
import type { Bench } from '../bench'

/** Removes the bend or the corner that is picked, else what is selected. Says whether there was anything. */
export function removePicked({ store, picked }: Bench): boolean {
  const plan = store.plan.peek()
  const hand = picked.peek()
  if (hand?.kind === 'bend' && plan.lines.get(hand.line)?.bends[hand.index]) {
    picked.value = null
    if (!store.mayEdit()) return true
    store.edit((now) => removeBend(now, hand.line, hand.index))
    store.tell('Bend removed')
    return true
  }
  if (hand?.kind === 'corner') {
    const before = store.settled.peek()
    store.edit((now) => removeHazardVertex(now, hand.hazard, hand.index))
    if (store.settled.peek() !== before) {
      picked.value = null
      store.tell('Corner removed')
      return true
    }
  }
  const selection = store.selection.peek()
  switch (selection?.kind) {
    case 'station':
      deleteStation(store, selection.id)
      return true
    case 'line':
      deleteLine(store, selection.id)
      return true
    case 'hazard':
      picked.value = null
      deleteHazard(store, selection.id)
      return true
    case 'several':
      deleteSeveral(store, selection)
      return true
    default:
      return false
  }
}
