import type { Bench } from './bench'

/** Asked of the panel on the document: put the cursor into the name field of what is selected. */
export const RENAME_EVENT = 'fieldpair-rename'

/** The map has no text fields: it asks the panel to take the cursor. */
export function renameSelected({ store, say }: Bench): boolean {
  const selection = store.selection.peek()
  if (!selection) return false
  document.dispatchEvent(new CustomEvent(RENAME_EVENT, { detail: selection }))
  say('Type the name in the panel')
  return true
}
