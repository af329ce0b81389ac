import type { Clearance } from '../catalog/clearances'
import { CROSSING_PRACTICE, HEIGHT_OVER, POWER_APPROACH } from '../catalog/crossing-practice'
import type { HazardNote, MetCrossing } from './crossing-notes'
import type { Beside } from './stretches-beside'

/** Hung wire over what people pass beneath must clear it at its lowest on the hottest day. */
export const overTraffic =
  (code: 'low-over-road' | 'low-over-track' | 'low-over-water', rule: Clearance) =>
  ({ hanging }: MetCrossing): HazardNote | undefined => {
    const hung = hanging()
    if (!hung || hung.clearM >= rule.metres) return undefined
    return {
      code,
      hangsM: hung.clearM,
      mustClearM: rule.metres,
      supportM: rule.metres + hung.sagM,
      source: rule.source,
    }
  }

/** Hung wire over rails is always told: it should go under them. */
export function overRails({ hanging, breakN }: MetCrossing): HazardNote {
  const rule = HEIGHT_OVER.rails
  const { railBreakN, railSpanM } = CROSSING_PRACTICE
  const hung = hanging()
  return {
    code: 'railway-overhead',
    ...(hung && hung.clearM < rule.metres && { hangsM: hung.clearM }),
    mustClearM: rule.metres,
    isWeak: breakN / 2 < railBreakN,
    leastN: railBreakN,
    mostSpanM: railSpanM,
    source: `${rule.source}; California GO 95, rules 110 and 113.4; SS0444, p. 2-4`,
  }
}

/** A power line is met with caution however the wire lies, and square. */
export function atPower({ crossing: { lay, angleDeg } }: MetCrossing): HazardNote {
  return {
    code: 'power-line-crossing',
    isHung: lay === 'overhead',
    ...(angleDeg !== undefined && angleDeg < CROSSING_PRACTICE.squareDeg && { angleDeg }),
    approachM: POWER_APPROACH.metres,
    source: `${POWER_APPROACH.source}; SS0330, p. 139, on noise`,
  }
}

/** Beside a power line: too near without crossing it, or along it for too long. */
export function besidePower({ nearestM, parallelM }: Beside, isCrossed: boolean): readonly HazardNote[] {
  const { powerBesideM, powerAlongM, powerReachM } = CROSSING_PRACTICE
  const notes: HazardNote[] = []
  if (!isCrossed && nearestM < powerReachM)
    notes.push({ code: 'power-line-near', nearestM, source: 'common practice; SS0330, p. 139' })
  if (parallelM > powerAlongM) {
    notes.push({
      code: 'power-line-parallel',
      parallelM,
      withinM: powerBesideM,
      source: 'SS0330, p. 139, and FM 24-20 from memory; distances are common practice',
    })
  }
  return notes
}

export const onRoad = (): HazardNote => ({
  code: 'surface-over-road',
  depthM: CROSSING_PRACTICE.roadDepthM,
  pastEdgeM: CROSSING_PRACTICE.roadEdgeM,
  source: 'SS0440, p. 1-27, and SS0444, p. 2-2; depth from memory of FM 24-20',
})

export const onTrack = (): HazardNote => ({
  code: 'surface-over-track',
  depthM: CROSSING_PRACTICE.trackDepthM,
  source: 'Popular Science Monthly 90 (1917), p. 820',
})

export const onRails = (): HazardNote => ({
  code: 'railway-not-under',
  stakeM: CROSSING_PRACTICE.railStakeM,
  source: 'SS0444, p. 2-4; California GO 95, rule 110, on consent',
})

export const onWater = ({ crossing: { insideM } }: MetCrossing): HazardNote => ({
  code: 'surface-over-water',
  insideM,
  source: 'FM 24-20, from memory',
})

export const keptOut = ({ crossing: { insideM } }: MetCrossing): HazardNote => ({
  code: 'keep-out-entered',
  insideM,
  source: 'the plan’s own keep-out area',
})
