import { requestName } from '../../state/requests'
import type { Bench } from '../bench'

/** Sends the cursor to the name field of what is selected; a line is named by its stations. */
export function renameSelected({ store, say }: Bench): boolean {
  const selection = store.selection.peek()
  if (!selection || selection.kind === 'line' || selection.kind === 'several') return false
  say('Type the name in the panel')
  return requestName()
}
