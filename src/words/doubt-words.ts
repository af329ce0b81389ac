import { placeText } from '../geo/place-text'
import type { Doubt } from '../report/doubts'
import type { Tongue } from './tongue'

type DoubtOf<C extends Doubt['code']> = Extract<Doubt, { readonly code: C }>

const SAY: { readonly [C in Doubt['code']]: (doubt: DoubtOf<C>, say: Tongue) => string } = {
  'long-leg': ({ where, legIndex, mapM, mostM }, { name, distance }) =>
    `Leg ${legIndex + 1} of ${name(where)} is ${distance(mapM)} long, and no leg should be over ${distance(mostM)}: is a coordinate wrong there, or its sign?`,
  'steep-leg': ({ where, legIndex, riseM, mapM }, { name, length }) =>
    `Leg ${legIndex + 1} of ${name(where)} rises or falls ${length(riseM)} in ${length(mapM)}: is the ground’s file right there?`,
  'rough-ground': ({ where, mapM, groundM }, { name, run }) =>
    `${name(where)} is ${run(mapM)} on the map and ${run(groundM)} along the ground: do the heights of the ground’s file jump from cell to cell?`,
  'height-off-earth': ({ where, heightM }, { name, length }) =>
    `The ground of ${name(where)} lies at ${length(heightM)}, where no land of the earth is: are the file’s heights in metres?`,
  'ground-elsewhere': () => 'The ground’s file meets no leg of the plan: is it of another place?',
  'picture-for-ground': () =>
    'The ground’s file has whole heights from 0 to 255 only, as a picture has: is it a picture, not elevations?',
  'ground-gap': ({ where, legIndex, legs, mapM, position }, { name, run }) =>
    `No height is known under ${legs === 1 ? `leg ${legIndex + 1}` : `legs ${legIndex + 1} to ${legIndex + legs}`} of ${name(where)}, or under a part of ${legs === 1 ? 'it' : 'them'}, ${position ? `about ${placeText(position, 'grid')}` : ''}: ${run(mapM)} ${legs === 1 ? 'has' : 'have'} the map’s length. Is an elevation file missing there, or has it a hole?`,
  'stations-on-one-spot': ({ where, other }, { name }) =>
    `${name(where)} and ${name(other)} stand on one spot: are they one station?`,
  'line-on-line': ({ where, other, sharedM }, { name, run }) =>
    `${name(where)} lies on ${name(other)} for ${run(sharedM)}: was it drawn twice?`,
}

/** The question that a doubt asks. */
export const doubtText = (doubt: Doubt, say: Tongue): string =>
  (SAY[doubt.code] as (doubt: Doubt, say: Tongue) => string)(doubt, say)
