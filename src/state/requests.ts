import type { Position } from '../geo/position'

const NAME = 'fieldpair-name-requested'
const PLACE = 'fieldpair-place-requested'

/** Says that the person wants to name what is selected. The map, which has no text fields, says it. */
export const requestName = (): boolean => document.dispatchEvent(new Event(NAME))

/** Hears it: the panel, which has the field. Returns how to stop. */
export const onNameRequested = (answer: () => void): (() => void) => listen(NAME, answer)

/** Says that the person wants to see a place. The panel, which has no map, says it. */
export const requestPlace = (position: Position): boolean =>
  document.dispatchEvent(new CustomEvent(PLACE, { detail: position }))

/** Hears it: the map. Returns how to stop. */
export const onPlaceRequested = (show: (position: Position) => void): (() => void) =>
  listen(PLACE, (event) => show((event as CustomEvent<Position>).detail))

function listen(name: string, answer: (event: Event) => void): () => void {
  document.addEventListener(name, answer)
  return () => document.removeEventListener(name, answer)
}
