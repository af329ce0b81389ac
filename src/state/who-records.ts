import { signal } from '@preact/signals'

/** The name of whoever records: asked once, and known until the page is left. */
export const recorder = signal('')

/** When a record is made, and by whom where he said it. */
export function recordedNow(): { readonly at: string; readonly by?: string } {
  const by = recorder.peek().trim()
  return { at: `${new Date().toISOString().slice(0, 19)}Z`, ...(by && { by }) }
}
