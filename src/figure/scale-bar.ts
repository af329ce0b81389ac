import { METRES_PER_FOOT, METRES_PER_MILE } from '../units'
import type { UnitSystem } from '../words/units'

export interface ScaleBar {
  readonly lengthM: number
  readonly text: string
}

const ROUND = [1, 2, 5]

/** The longest round length that is no longer than `mostM`, in the person's units. */
export function scaleBar(mostM: number, units: UnitSystem): ScaleBar {
  if (units === 'metric') {
    const lengthM = roundBelow(mostM)
    return { lengthM, text: lengthM >= 1000 ? `${lengthM / 1000} km` : `${lengthM} m` }
  }
  const miles = mostM / METRES_PER_MILE
  if (miles >= 0.5) {
    const round = miles < 1 ? 0.5 : roundBelow(miles)
    return { lengthM: round * METRES_PER_MILE, text: `${round === 0.5 ? '½' : round} mi` }
  }
  const feet = roundBelow(mostM / METRES_PER_FOOT)
  return { lengthM: feet * METRES_PER_FOOT, text: `${feet} ft` }
}

function roundBelow(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most))
  const lead = ROUND.findLast((step) => step * power <= most * (1 + 1e-12)) ?? 1
  return lead * power
}
