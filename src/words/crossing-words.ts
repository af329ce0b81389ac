import type { Direction, Directions } from '../hazard/crossing-notes'
import type { Tongue } from './tongue'

/** How wire is made safe where it crosses: the same words in a caution and in the crew's directions. */
export const underRoad = ({ depthM, pastEdgeM }: Directions['bury-under-road'], say: Tongue): string =>
  `${say.range(depthM.fromM, depthM.toM, 'depthM')} deep and ${say.length(pastEdgeM)} past each edge`
export const underTrack = ({ depthM }: Directions['bury-under-track'], say: Tongue): string =>
  `${say.depth(depthM)} deep, tied to something firm at each side`
export const underRails = ({ stakeM }: Directions['pass-under-rails'], say: Tongue): string =>
  `close by a sleeper, staked ${say.range(stakeM.fromM, stakeM.toM, 'lengthM')} outside them and tied to both, with no slack, tagged at both ends`
export const IN_WATER = 'weighted, anchored on both banks, no splice in it'

const SAY: { readonly [C in keyof Directions]: (figures: Directions[C], say: Tongue) => string } = {
  'hang-over-traffic': ({ clearM }, { height }) =>
    `hang it over, ${height(clearM)} clear at its lowest; keep traffic off while it hangs low`,
  'bury-under-road': (figures, say) => `take it through a culvert, or bury it ${underRoad(figures, say)}`,
  'bury-under-track': (figures, say) => `bury it ${underTrack(figures, say)}`,
  'pass-under-rails': (figures, say) =>
    `with the railway’s consent, under the rails ${underRails(figures, say)}`,
  'hang-over-water': () => 'hang it over, tied on both banks',
  'lay-in-water': () => `lay it ${IN_WATER}`,
  'lead-under-water': () => 'lead it under, anchored on both banks',
}

/** What a crew does at a crossing that is laid as it should be. */
export const directionWords = (direction: Direction, say: Tongue): string =>
  (SAY[direction.code] as (figures: Direction, say: Tongue) => string)(direction, say)
