import { batch } from '@preact/signals'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import { selectionOf } from './selection-of'
import type { Here } from './whats-here'

/** Selects a thing on the map, with its bend or corner in hand. `adding` picks legs of one line together. */
export function pick({ store, picked }: Bench, found: Here, adding = false): void {
  batch(() => {
    picked.value = found?.kind === 'bend' || found?.kind === 'corner' ? found : null
    store.selection.value = selectionOf(found, adding ? store.selection.peek() : null)
  })
}

/** Lets go of a bend or a corner as soon as something else is selected, wherever that was done. */
export function keepPickedSelected({ store, picked }: Bench): () => void {
  return effect(() => {
    const hand = picked.value
    const selection = store.selection.value
    const held =
      hand?.kind === 'bend'
        ? selection?.kind === 'line' && selection.id === hand.line
        : hand?.kind === 'corner' && selection?.kind === 'hazard' && selection.id === hand.hazard
    if (hand && !held) picked.value = null
  })
}
