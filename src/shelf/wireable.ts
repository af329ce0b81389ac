import type { Country } from './country'
import { treesOf, wiring } from './every-net'
import { seemsWireable } from './first-nets'
import { allOf } from './left'
import type { Edge } from './net-shapes'
import { waysToShare } from './sharing'

/** Up to so many places every tree is tried for whether there is wire enough. */
const MOST_WIRED = 5

/** Whether all who must talk can be joined with the wire that there is; of many places, as far as a search sees. */
export function isWireable(country: Country): boolean {
  if (country.shelf.places.length > MOST_WIRED) return seemsWireable(country)
  const trees = function* ([block, ...others]: readonly (readonly number[])[]): Generator<readonly Edge[]> {
    if (!block) yield []
    else
      for (const tree of treesOf(country, block)) for (const rest of trees(others)) yield [...tree, ...rest]
  }
  for (const blocks of waysToShare(country))
    for (const edges of trees(blocks)) if (!wiring(country, edges, allOf(country)).next().done) return true
  return false
}
