import type { Bench, Step } from '../bench'
import { removePicked } from './remove-picked'
import { renameSelected } from './rename'

/** What can be done with what is selected, for hands that have neither keys nor a right button. */
export function selectedSteps(bench: Bench): readonly Step[] {
  const { store, picked } = bench
  const selection = store.selection.value
  const hand = picked.value
  if (!selection || selection.kind === 'circuit') return []
  const letGo: Step = {
    words: 'Let go',
    act: () => {
      picked.value = null
      store.selection.value = null
    },
  }
  const remove: Step = {
    words: hand ? `Remove this ${hand.kind}` : 'Delete',
    act: () => void removePicked(bench),
  }
  if (store.locked.value) return [letGo]
  if (selection.kind === 'line' || selection.kind === 'several') return [remove, letGo]
  return [{ words: 'Rename', act: () => void renameSelected(bench) }, remove, letGo]
}

/** What dragging does with what is selected. */
export function selectedHint({ store }: Bench): string {
  switch (store.selection.value?.kind) {
    case 'station':
      return 'Drag it to where it stands'
    case 'several':
      return 'Drag one: all go with it'
    case 'line':
      return 'Drag a bend, or the middle of a leg'
    case 'hazard':
      return 'Drag it, or one of its corners'
    default:
      return 'Click to select; drag a station, a bend or the middle of a leg'
  }
}
