import type { Store } from '../state/store'

/** While a hand drags in a large net, says that the spools, and what follows from them, are from before the move. */
export function FromBefore({ store, what }: { store: Store; what: string }) {
  const isSo = store.report.value.spools.some(({ isFromBefore }) => isFromBefore)
  return isSo && <p class="soft">{what} are from before this move: they follow when you let go.</p>
}
