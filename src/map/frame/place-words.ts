import type { Position } from '../../geo/position'
import type { Store } from '../../state/store'
import { formatLengthM } from '../../words/units'

/** Not needed for the first sight of the map, so it comes a little later. */
let placeText: typeof import('../../geo/place-text').placeText | undefined
void import('../../geo/place-text').then((loaded) => {
  placeText = loaded.placeText
})

/** Where a place is, in the form that the person likes, and how high, where that is known: `47.21840° N 11.90510° E · 1043 m high`. */
export function placeWords({ ground, units, placeForm }: Store, position: Position): string {
  const heightM = ground.peek()?.heightM(position[0], position[1])
  return [
    placeText?.(position, placeForm.peek()),
    heightM === undefined ? '' : `${formatLengthM(heightM, units.peek())} high`,
  ]
    .filter(Boolean)
    .join(' · ')
}
