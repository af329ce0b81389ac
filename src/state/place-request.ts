import type { Position } from '../geo/position'

const WANTED = 'fieldpair-place-wanted'

/** Says that the person wants to see a place. The panel, which has no map, says it. */
export const wantPlace = (position: Position): boolean =>
  document.dispatchEvent(new CustomEvent(WANTED, { detail: position }))

/** Hears it: the map. Returns the undoing of itself. */
export function onPlaceWanted(show: (position: Position) => void): () => void {
  const answer = (event: Event) => show((event as CustomEvent<Position>).detail)
  document.addEventListener(WANTED, answer)
  return () => document.removeEventListener(WANTED, answer)
}
