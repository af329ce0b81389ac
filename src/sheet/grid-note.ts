import { gridReference } from '../geo/grid-reference'
import type { Position } from '../geo/position'
import { hasUtm } from '../geo/utm'

/**
 * What must be known of the grid references of these places before anybody reckons with them; empty where they all lie in one zone of UTM. Each
 * place then bears its whole reference.
 */
export function gridNote(places: readonly { readonly position: Position }[]): string {
  const zones = new Set(places.map(({ position }) => gridReference(position)?.split(' ')[0] ?? ''))
  const isPolar = (position: Position) => !hasUtm(position[1])
  const lons = places.map(({ position }) => position[0])
  const isAcross = lons.some((lon) => lon > 90) && lons.some((lon) => lon < -90)
  const notes = [
    places.some(({ position }) => isPolar(position))
      ? 'Above 84° N and below 80° S there is no UTM grid: references there are of the polar grid (UPS).'
      : '',
    isAcross && places.every(({ position }) => !isPolar(position))
      ? 'The antimeridian runs between these places: east of it longitudes are west, and zone 60 meets zone 1.'
      : '',
    zones.size > 1
      ? `Grid zones ${[...zones].join(' and ')}: each place bears its own, and no distance across the edge follows from the figures.`
      : '',
  ]
  return notes.filter(Boolean).join(' ')
}
