import { HEIGHT_OVER } from '../catalog/crossing-practice'
import { OVERHEAD } from '../catalog/overhead'
import { LOADED_SHARE, LOADING_DISTRICTS, LOADINGS } from '../catalog/overhead-loading'
import { pointOnLeg } from '../geo/leg-length'
import type { Crossing } from '../hazard/crossings'
import { legUnder } from '../measure/iced-spans'
import { hotClearanceM, type OverheadLeg, spanAt } from '../measure/overhead-spans'
import { memoryOfEach } from '../memo'
import { verticesOf } from '../plan/plan'
import type { PlaceCaution } from './caution'
import type { JudgedLine } from './judged-line'
import { overheadLegOf } from './overhead-leg'

const remembered = memoryOfEach<JudgedLine, readonly (OverheadLeg | undefined)[]>()

/** The legs that hang, at their places: asked for at each crossing, and then with and without ice. */
const hungLegs = (judged: JudgedLine) =>
  remembered(judged, [], () =>
    judged.line.legs.map(({ lay }, legIndex) =>
      lay === 'overhead' ? overheadLegOf({ ...judged, legs: judged.measured.legs }, legIndex) : undefined,
    ),
  )

const legStartM = ({ measured }: JudgedLine, legIndex: number) =>
  measured.legs.slice(0, legIndex).reduce((sum, leg) => sum + leg.mapM, 0)

/** How high the wire hangs over what it crosses on the hottest day, and how much its span sags, m; undefined where it has no sag to hang by. */
export function hangingOver(judged: JudgedLine, { legIndex, distanceM }: Crossing) {
  const leg = hungLegs(judged)[legIndex]
  if (!leg) return undefined
  const inLegM = distanceM - legStartM(judged, legIndex)
  return { clearM: Math.max(0, hotClearanceM(leg, inLegM)), sagM: spanAt(leg, inLegM).hot.sagM }
}

/** Spans that hang too low over open ground, or pull too hard, leg by leg. */
export function overheadCautions(judged: JudgedLine): PlaceCaution[] {
  const { line } = judged
  const hung = hungLegs(judged)
  const ofLegs = hung.flatMap((leg, legIndex) => {
    if (!leg) return []
    const { spans } = leg
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
  const iced = underIce(judged)
  return iced ? [...ofLegs, iced] : ofLegs
}

/**
 * Ice and wind that a line's overhead legs do not bear, at the leg that fares worst: those of the plan's loading district, or the least of
 * all where it names none; undefined where they bear them.
 */
function underIce(judged: JudgedLine): PlaceCaution | undefined {
  const { line, wire, plan } = judged
  if (!wire) return undefined
  const legs = hungLegs(judged).flatMap((overhead, legIndex) => (overhead ? [{ legIndex, overhead }] : []))
  const rule = HEIGHT_OVER.ground
  const { loadingDistrict } = plan
  for (const district of loadingDistrict ? [loadingDistrict] : LOADING_DISTRICTS) {
    const loading = LOADINGS[district]
    const looked = legs.map(({ legIndex, overhead }) => ({
      legIndex,
      ...legUnder(overhead, { wire, tempC: plan.wireTempC, loading }),
    }))
    // What pulls hardest, in shares of what is allowed, or hangs lowest, in shares of what is asked for.
    const severity = (each: (typeof looked)[number]) =>
      Math.max(each.pulledShare / LOADED_SHARE, rule.metres / Math.max(0.1, each.lowest.clearanceM))
    const worst = looked.toSorted((a, b) => severity(b) - severity(a))[0]
    if (!worst || severity(worst) <= 1) continue
    const vertices = verticesOf(plan, line)
    const { mapM } = judged.measured.legs[worst.legIndex]!
    const { atM, clearanceM } = worst.lowest
    return {
      code: 'overhead-ice',
      where: line.id,
      ...(loadingDistrict && { district: loadingDistrict }),
      iceMm: loading.iceMm,
      hangsM: Math.max(0, clearanceM),
      mustClearM: rule.metres,
      pulledShare: worst.pulledShare,
      mostShare: LOADED_SHARE,
      place: {
        position: pointOnLeg(vertices[worst.legIndex]!, vertices[worst.legIndex + 1]!, atM / mapM),
        legIndex: worst.legIndex,
        distanceM: legStartM(judged, worst.legIndex) + atM,
      },
      source: `${loading.source}; ${rule.source}`,
    }
  }
  return undefined
}
