const WANTED = 'fieldpair-name-wanted'

/** Says that the person wants to name what is selected. The map, which has no text fields, says it. */
export const wantName = (): boolean => document.dispatchEvent(new Event(WANTED))

/** Hears it: the panel, which has the field. Returns the undoing of itself. */
export function onNameWanted(answer: () => void): () => void {
  document.addEventListener(WANTED, answer)
  return () => document.removeEventListener(WANTED, answer)
}
