import type { BesideSuggested } from '../state/ground-state'
import type { Store } from '../state/store'

/** Ways that a line could take and the ground in which they lie, as the screen shows them. */
export type WaysOnPaper = NonNullable<BesideSuggested['told']> & Pick<BesideSuggested, 'corridor'>

/** What is shown on the screen of it, for paper; null where nothing is. */
export function waysOnPaper(store: Store): WaysOnPaper | null {
  const { told, corridor } = store.besideSuggested.value
  return told && { ...told, corridor }
}
