import { HEIGHT_OVER } from '../catalog/crossing-practice'
import { OVERHEAD } from '../catalog/overhead'
import { pointOnLeg } from '../geo/leg-length'
import type { Crossing } from '../hazard/crossings'
import { hotClearanceM, spanAt } from '../measure/overhead-spans'
import { verticesOf } from '../plan/plan'
import type { PlaceCaution } from './caution'
import type { JudgedLine } from './judged-line'
import { overheadLegOf } from './overhead-leg'

const overheadOf = (judged: JudgedLine, legIndex: number) =>
  overheadLegOf({ ...judged, legs: judged.measured.legs }, legIndex)

const legStartM = ({ measured }: JudgedLine, legIndex: number) =>
  measured.legs.slice(0, legIndex).reduce((sum, leg) => sum + leg.mapM, 0)

/** How high the wire hangs over what it crosses on the hottest day, and how much its span sags, m; undefined where it has no sag to hang by. */
export function hangingOver(judged: JudgedLine, { legIndex, distanceM }: Crossing) {
  const leg = overheadOf(judged, legIndex)
  if (!leg) return undefined
  const inLegM = distanceM - legStartM(judged, legIndex)
  return { clearM: Math.max(0, hotClearanceM(leg, inLegM)), sagM: spanAt(leg, inLegM).hot.sagM }
}

/** Spans that hang too low over open ground, or pull too hard, leg by leg. */
export function overheadCautions(judged: JudgedLine): PlaceCaution[] {
  const { line } = judged
  return line.legs.flatMap((leg, legIndex) => {
    if (leg.lay !== 'overhead') return []
    const spans = overheadOf(judged, legIndex)?.spans
    if (!spans) return []
    const cautions: PlaceCaution[] = []
    const vertices = verticesOf(judged.plan, line)
    const { mapM } = judged.measured.legs[legIndex]!
    const placeAt = (inLegM: number) => ({
      position: pointOnLeg(vertices[legIndex]!, vertices[legIndex + 1]!, inLegM / mapM),
      legIndex,
      distanceM: legStartM(judged, legIndex) + inLegM,
    })
    const { lowest } = spans.reduce((a, b) => (b.lowest.clearanceM < a.lowest.clearanceM ? b : a))
    const rule = HEIGHT_OVER.ground
    if (lowest.clearanceM < rule.metres) {
      cautions.push({
        code: 'low-overhead',
        where: line.id,
        hangsM: Math.max(0, lowest.clearanceM),
        mustClearM: rule.metres,
        place: placeAt(lowest.atM),
        source: rule.source,
      })
    }
    const tight = spans.reduce((a, b) => (b.safetyFactor < a.safetyFactor ? b : a))
    if (tight.safetyFactor < OVERHEAD.safetyFactor) {
      cautions.push({
        code: 'overhead-tension',
        where: line.id,
        coldC: OVERHEAD.coldC,
        pullN: tight.coldTensionN,
        safetyFactor: tight.safetyFactor,
        leastFactor: OVERHEAD.safetyFactor,
        place: placeAt(tight.startM),
        source: 'common practice; codes ask for 2 to 4',
      })
    }
    return cautions
  })
}
