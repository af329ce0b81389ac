import { CROSSING_PRACTICE, HEIGHT_OVER } from '../catalog/crossing-practice'
import { OVERHEAD } from '../catalog/overhead'
import { pointOnLeg } from '../geo/leg-length'
import type { Crossing } from '../hazard/crossings'
import { hotClearanceM, spanAt } from '../measure/overhead-spans'
import { verticesOf } from '../plan/plan'
import { cautionAt, type JudgedLine, LOCAL_CODE, metresAndFeet } from './judged-line'
import { overheadLegOf } from './overhead-leg'
import type { Caution } from './report'

const overheadOf = (judged: JudgedLine, legIndex: number) =>
  overheadLegOf({ ...judged, legs: judged.measured.legs }, legIndex)

const legStartM = ({ measured }: JudgedLine, legIndex: number) =>
  measured.legs.slice(0, legIndex).reduce((sum, leg) => sum + leg.mapM, 0)

/** How high the wire hangs over what it crosses on the hottest day, and how much its span sags. */
function hangingOver(judged: JudgedLine, { legIndex, distanceM }: Crossing) {
  const leg = overheadOf(judged, legIndex)
  if (!leg) return undefined
  const inLegM = distanceM - legStartM(judged, legIndex)
  return { clearM: Math.max(0, hotClearanceM(leg, inLegM)), sagM: spanAt(leg, inLegM).hot.sagM }
}

export function overRoadCaution(judged: JudgedLine, crossing: Crossing): Caution | undefined {
  const over = crossing.kind === 'road' ? 'road' : 'track'
  const rule = HEIGHT_OVER[over]
  const hanging = hangingOver(judged, crossing)
  if (!hanging || hanging.clearM >= rule.metres) return undefined
  const supportM = Math.ceil((rule.metres + hanging.sagM) * 10) / 10
  return cautionAt(
    judged,
    crossing,
    `low-over-${over}`,
    ` and hangs ${metresAndFeet(hanging.clearM)} over it on a hot day; it must clear ${metresAndFeet(rule.metres)}. Supports of ${metresAndFeet(supportM)} would do, or a shorter span.`,
    rule.source,
  )
}

export function overRailCaution(judged: JudgedLine, crossing: Crossing): Caution {
  const rule = HEIGHT_OVER.railway
  const { railBreakN, railSpanM } = CROSSING_PRACTICE
  const hanging = hangingOver(judged, crossing)
  const low =
    hanging && hanging.clearM < rule.metres
      ? ` It clears them by ${metresAndFeet(hanging.clearM)}; ${metresAndFeet(rule.metres)} is asked for.`
      : ''
  const weak = (judged.wire?.breakN ?? 0) / 2 < railBreakN
  const strength = weak
    ? ` Each of its wires bears less than ${railBreakN} N (170 lb), so it may not hang there unsupported.`
    : ` Its span there may not be over ${railSpanM} m (150 ft).`
  return cautionAt(
    judged,
    crossing,
    'railway-overhead',
    ` and hangs over the rails.${low}${strength} Go under the rails, and only with the railway’s consent.`,
    `${rule.source}; California GO 95, rules 110 and 113.4; SS0444, p. 2-4`,
  )
}

/** Spans that hang too low over open ground, or pull too hard, leg by leg. */
export function overheadCautions(judged: JudgedLine): Caution[] {
  const { line, name } = judged
  return line.legs.flatMap((leg, legIndex) => {
    if (leg.lay !== 'overhead') return []
    const spans = overheadOf(judged, legIndex)?.spans
    if (!spans) return []
    const cautions: Caution[] = []
    const vertices = verticesOf(judged.plan, line)
    const { mapM } = judged.measured.legs[legIndex]!
    const say = (code: string, inLegM: number, text: string, source: string) =>
      cautions.push({
        code,
        where: line.id,
        text: `${name}, leg ${legIndex + 1}: ${text} ${LOCAL_CODE}`,
        place: {
          position: pointOnLeg(vertices[legIndex]!, vertices[legIndex + 1]!, inLegM / mapM),
          legIndex,
          distanceM: legStartM(judged, legIndex) + inLegM,
        },
        source,
      })
    const low = spans.reduce((a, b) => (b.lowest.clearanceM < a.lowest.clearanceM ? b : a))
    const rule = HEIGHT_OVER.ground
    if (low.lowest.clearanceM < rule.metres) {
      say(
        'low-overhead',
        low.lowest.atM,
        `the wire hangs ${metresAndFeet(Math.max(0, low.lowest.clearanceM))} over the ground on a hot day; where people walk it must clear ${metresAndFeet(rule.metres)}.`,
        rule.source,
      )
    }
    const tight = spans.reduce((a, b) => (b.safetyFactor < a.safetyFactor ? b : a))
    if (tight.safetyFactor < OVERHEAD.safetyFactor) {
      say(
        'overhead-tension',
        tight.startM,
        `on a day of ${OVERHEAD.coldC} °C the wire pulls ${Math.round(tight.coldTensionN)} N, and breaks at ${tight.safetyFactor.toFixed(1)} times that; keep it at ${OVERHEAD.safetyFactor} or more with more sag or shorter spans.`,
        'common practice; codes ask for 2 to 4',
      )
    }
    return cautions
  })
}
