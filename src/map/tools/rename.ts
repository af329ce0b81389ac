import { wantName } from '../../state/name-request'
import type { Bench } from '../bench'

/** Sends the cursor to the name field of what is selected. */
export function renameSelected({ store, say }: Bench): boolean {
  if (!store.selection.peek()) return false
  say('Type the name in the panel')
  return wantName()
}
