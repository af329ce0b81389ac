import { computed, type ReadonlySignal } from '@preact/signals'
import type { Position } from '../../geo/position'
import type { StationId } from '../../plan/id'
import type { Bench } from '../bench'
import { showDraft } from './show-draft'

/** Shows how the net would go on: from the station at the end of the line that was just drawn to the pointer. */
export function showTail(
  { store, view }: Bench,
  tail: ReadonlySignal<StationId | null>,
  pointer: ReadonlySignal<Position | null>,
): () => void {
  const from = computed(() => {
    const station = tail.value && store.settled.value.stations.get(tail.value)
    return station && pointer.value ? [station.position] : []
  })
  return showDraft(view, from, pointer, { corners: false })
}
