import type { Caution, HazardCaution } from '../report/caution'
import { IN_WATER, underRails, underRoad, underTrack } from './crossing-words'
import type { Tongue } from './tongue'
import { formatDb } from './units'

type CautionOf<C extends Caution['code']> = Extract<Caution, { readonly code: C }>

/** The last word of every caution about a rule, and of what a layman may not do. */
const LOCAL = 'The local code governs.'
const LICENSED = 'The local code governs; where it asks for a licensed person, get one.'

const NO_RINGING = 'Nobody rings while someone holds bare ends.'

/** `Camp – Ford meets County road 420 m out`. */
const meets = ({ where, hazard, place }: HazardCaution, { name, length }: Tongue) =>
  `${name(where)} meets ${name(hazard)} ${length(place.distanceM)} out`

const lowOverTraffic = (caution: CautionOf<'low-over-road' | 'low-over-track'>, say: Tongue) => {
  const { hangsM, mustClearM, supportM } = caution
  return `${meets(caution, say)} and hangs ${say.height(hangsM)} over it on a hot day; it must clear ${say.height(mustClearM)}. Supports of ${say.heightUp(supportM)} would do, or a shorter span. ${LOCAL}`
}

/** A leg by its number, from 1. */
const onLeg = (
  { where, place }: CautionOf<'low-overhead' | 'overhead-tension' | 'overhead-ice'>,
  { name }: Tongue,
) => `${name(where)}, leg ${place.legIndex + 1}`

/** A line, and which of its pairs where it has several. */
const ofPair = ({ where, pair }: { readonly where: string; readonly pair?: number }, { name }: Tongue) =>
  pair === undefined ? name(where) : `${name(where)}, pair ${pair + 1}`

const SAY: { readonly [C in Caution['code']]: (caution: CautionOf<C>, say: Tongue) => string } = {
  'surface-over-road': (caution, say) =>
    `${meets(caution, say)} and lies open on it: traffic is what breaks wire. Take it through a culvert, bury it ${underRoad(caution, say)}, or hang it over. ${LOCAL}`,
  'surface-over-track': (caution, say) =>
    `${meets(caution, say)} and lies open on it. Bury it ${underTrack(caution, say)}, or hang it over. ${LOCAL}`,
  'low-over-road': lowOverTraffic,
  'low-over-track': lowOverTraffic,
  'low-over-water': (caution, say) =>
    `${meets(caution, say)} and hangs ${say.height(caution.hangsM)} over it on a hot day; it must clear ${say.height(caution.mustClearM)}, and far more where boats have masts. Supports of ${say.heightUp(caution.supportM)} would do, or a shorter span. ${LOCAL}`,
  'railway-not-under': (caution, say) =>
    `${meets(caution, say)} and does not go under the rails. With the railway’s consent, pass it under them ${underRails(caution, say)}. ${LOCAL}`,
  'railway-overhead': (caution, say) => {
    const { hangsM, mustClearM, isWeak, leastN, mostSpanM } = caution
    const low =
      hangsM === undefined
        ? ''
        : ` It clears them by ${say.height(hangsM)}; ${say.height(mustClearM)} is asked for.`
    const strength = isWeak
      ? ` Each of its wires bears less than ${say.force(leastN)}, so it may not hang there unsupported.`
      : ` Its span there may not be over ${say.height(mostSpanM)}.`
    return `${meets(caution, say)} and hangs over the rails.${low}${strength} Go under the rails, and only with the railway’s consent. ${LOCAL}`
  },
  'surface-over-water': (caution, say) => {
    const long = caution.insideM > 1 ? ` for ${say.length(caution.insideM)}` : ''
    return `${meets(caution, say)}${long} with a lay for dry ground. Tie it to a bridge on the downstream side, hang it over, or lay it as water: ${IN_WATER}. ${LOCAL}`
  },
  'power-line-crossing': (caution, say) => {
    const { isHung, angleDeg, approachM } = caution
    const how = isHung
      ? 'Hung wire can whip up into it: take it down to the ground here, or have the owner switch off.'
      : 'Keep it on or under the ground here, and throw no wire.'
    const square = angleDeg === undefined ? '' : ` It crosses at ${Math.round(angleDeg)}°: turn it square.`
    return `${meets(caution, say)}. ${how}${square} Nobody, and no wire or pole in hand, comes within ${say.height(approachM)} of it, more above 50 kV. ${LOCAL}`
  },
  'power-line-near': ({ where, hazard, nearestM }, { name, length }) =>
    `${name(where)} comes within ${length(Math.max(1, nearestM))} of ${name(hazard)}: a falling pole or a whipping wire would reach it. Move the line off. ${LOCAL}`,
  'power-line-parallel': ({ where, hazard, parallelM, withinM }, { name, length }) =>
    `${name(where)} runs beside ${name(hazard)} for ${length(parallelM)} within ${length(withinM)}: it will hum, and a fault on the power line can put a dangerous voltage on the pair. Move it off or cross square and leave. ${LOCAL}`,
  'keep-out-entered': (caution, say) => {
    const long = caution.insideM > 1 ? ` and stays in it for ${say.length(caution.insideM)}` : ''
    return `${meets(caution, say)}${long}. Lead it round. ${LOCAL}`
  },
  'low-overhead': (caution, say) =>
    `${onLeg(caution, say)}: the wire hangs ${say.height(caution.hangsM)} over the ground on a hot day; over fields and whatever machines cross it must clear ${say.height(caution.mustClearM)}. ${LOCAL}`,
  'overhead-tension': (caution, say) => {
    const { coldC, pullN, safetyFactor, leastFactor } = caution
    return `${onLeg(caution, say)}: on a day of ${say.temp(coldC)} the wire pulls ${say.force(pullN)}, and breaks at ${safetyFactor.toFixed(1)} times that; keep it at ${leastFactor} or more with more sag or shorter spans. ${LOCAL}`
  },
  'overhead-ice': (caution, say) => {
    const { district, iceMm, hangsM, mustClearM, pulledShare, mostShare } = caution
    const what = iceMm > 0 ? `under ${say.quantity(iceMm, 'diameterMm')} of ice` : 'in a gale'
    const low =
      hangsM < mustClearM
        ? ` hangs ${say.height(hangsM)} over the ground, where ${say.height(mustClearM)} are asked for`
        : ''
    const torn =
      pulledShare >= 1
        ? ' breaks in the wind'
        : ` is pulled to ${Math.round(100 * pulledShare)} % of its strength in the wind`
    const pull = pulledShare > mostShare ? torn : ''
    const where = district ? `, as the ${district} loading district has it,` : ''
    const when = district ? 'Shorten' : 'Where that can come, shorten'
    return `${onLeg(caution, say)}: ${what}${where} the wire${[low, pull].filter((part) => part !== '').join(', and')}. ${when} its spans, hang it higher, or lay it on the ground. ${LOCAL}`
  },
  'ridge-lightning': ({ where, lengthM, place }, { name, length }) =>
    `${name(where)} runs along high ground for ${length(lengthM)}, from ${length(place.distanceM)} out, where lightning looks for it. Lead it below the crest, and leave it alone when thunder is near.`,
  'class-b-wire': (caution, say) =>
    `${ofPair(caution, say)}: ${caution.splices.toFixed(1)} splices in ${say.run(caution.inM)} make it class B wire; class A has ${caution.most} at most.`,
  'splice-cluster': (caution, say) =>
    `${ofPair(caution, say)}: Two splices lie within ${say.height(caution.withinM)}: cut the short piece out and make one splice.`,
  'splice-under-water': (caution, say) =>
    `${ofPair(caution, say)}: A splice falls under water: give this line a longer spool.`,
  'splice-on-span': (caution, say) =>
    `${ofPair(caution, say)}: A splice falls on an overhead leg: make it at a support.`,
  'ringing-shock': ({ where, volts }, { name }) =>
    `${name(where)}: ringing puts up to ${Math.round(volts)} V on the pair. ${NO_RINGING}`,
  'dc-shock': ({ where, volts }, { name }) =>
    `${name(where)}: the supply puts ${volts} V on the pair. Switch it off before work on the line. ${LICENSED}`,
  'earth-return': () =>
    'Earth return picks up power hum and stray voltage, and lightning finds it: a pair is better. Keep people and animals off the electrodes.',
  'rider-balance': ({ where, over, unbalanceOhms, crosstalkDb }, { name }) =>
    `${name(where)}: the ${over} is heard on the pairs under it unless their two wires are alike. A difference of ${unbalanceOhms.toFixed(1)} Ω leaves ${formatDb(crosstalkDb)} between them: splice both wires of a pair with the same care, measure both, and never ride on a worn or untwisted pair.`,
  'stock-short': ({ where, missingM, notLaid }, { name, lengthUp }) => {
    const short = `The stock of ${name(where)} is ${lengthUp(missingM)} too short`
    const names = notLaid.map(name).join(', ')
    return names === '' ? `${short} for the reserve; it lays every line.` : `${short} to lay ${names} whole.`
  },
  'power-lines': () =>
    `Keep wire, poles and people clear of power lines; cross them square and beneath, and only with their owner’s word. ${LICENSED}`,
  lightning: () =>
    'Stay off the line, off poles and off ridges when thunder is near; disconnect and earth the pair before the storm.',
  'road-and-rail': () =>
    `Ask the road’s or the railway’s owner before crossing, post someone to stop traffic, and leave no slack on rails. ${LICENSED}`,
  'public-network': () =>
    'Never join this net to a public network unless a licensed person does it with approved equipment.',
}

/** A caution as a sentence or two. */
export const cautionText = (caution: Caution, say: Tongue): string =>
  (SAY[caution.code] as (caution: Caution, say: Tongue) => string)(caution, say)

export type RingingCaution = CautionOf<'ringing-shock'>

/** The ringing of several circuits in one sentence. */
export const ringingText = (cautions: readonly RingingCaution[], { name }: Tongue): string =>
  `Ringing puts up to ${cautions.map(({ where, volts }) => `${Math.round(volts)} V on ${name(where)}`).join(', ')}. ${NO_RINGING}`
