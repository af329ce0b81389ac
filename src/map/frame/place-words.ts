import type { Position } from '../../geo/position'
import type { Store } from '../../state/store'
import { formatLengthM } from '../../words/units'

/** Not needed for the first sight of the map, so it comes a little later. */
let gridReference: typeof import('../../geo/grid-reference').gridReference | undefined
void import('../../geo/grid-reference').then((loaded) => {
  gridReference = loaded.gridReference
})

/** Where a place is and how high, where that is known: `47.21840° N 11.90510° E · 32T PT 90812 32711 · 1043 m`. */
export function placeWords({ ground, units }: Store, [lonDeg, latDeg]: Position): string {
  const heightM = ground.peek()?.heightM(lonDeg, latDeg)
  return [
    degreesText(lonDeg, latDeg),
    gridReference?.([lonDeg, latDeg]),
    heightM === undefined ? '' : formatLengthM(heightM, units.peek()),
  ]
    .filter(Boolean)
    .join(' · ')
}

function degreesText(lonDeg: number, latDeg: number): string {
  const lat = `${Math.abs(latDeg).toFixed(5)}° ${latDeg < 0 ? 'S' : 'N'}`
  const lon = `${Math.abs(lonDeg).toFixed(5)}° ${lonDeg < 0 ? 'W' : 'E'}`
  return `${lat} ${lon}`
}
