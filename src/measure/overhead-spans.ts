import { COPPER_OHM_MM2_PER_KM, COPPER_STRETCH, OVERHEAD } from '../catalog/overhead'
import type { Wire } from '../catalog/wire'
import { ok, type Result } from '../problem'
import { type Hanging, hang, hangBySag, type Stretch, tensionAfterN, wireHeightM } from './catenary'
import { weightNPerM } from './ice-and-wind'

/** One span of an overhead leg, between two supports. Distances are on the map from the leg's start, heights over one datum; m. */
export interface OverheadSpan {
  readonly startM: number
  readonly endM: number
  /** Height of the wire at its first support. */
  readonly startHeightM: number
  /** As it hangs at the plan's temperature, and as it hangs on the hottest day reckoned with. */
  readonly hanging: Hanging
  readonly hot: Hanging
  /** Greatest tension on the coldest day reckoned with, N, and how many times more the wire bears; ∞ where its strength is unknown. */
  readonly coldTensionN: number
  readonly safetyFactor: number
  /** Where the hot wire comes nearest to the ground. */
  readonly lowest: { readonly atM: number; readonly clearanceM: number }
}

/** The spans of a leg over the ground that they were reckoned on. */
export interface OverheadLeg {
  readonly spans: readonly OverheadSpan[]
  /** Height of that ground at a distance along the leg, m: 0 all along where it is not known. */
  readonly groundAt: (distanceM: number) => number
}

/** Spans of an overhead leg: as many as make none longer than `spanM`, by default the handbook's. Lengths in m. */
export const spanCount = (lengthM: number, spanM: number = OVERHEAD.spanM): number =>
  Math.max(1, Math.ceil(lengthM / spanM - 1e-6))

/** What hangs, and how. */
export interface Overhead {
  /** Length of the leg on the map, m. */
  readonly lengthM: number
  readonly wire: Wire
  readonly tempC: number
  /** Sag as strung, % of the span. */
  readonly sagPct: number
  readonly supportM?: number | undefined
  readonly spanM?: number | undefined
}

/** Places in a span at which its clearance is looked at, besides its supports. */
export const LOOKS = 9

/** How a run of wire stretches; where the wire does not say, as if all its metal were the copper that its resistance speaks of. */
export function stretchOf(wire: Wire): Stretch {
  const oneOhmPerKm = wire.loopOhmPerKm / 2
  const areaMm2 = 2 * (COPPER_OHM_MM2_PER_KM / oneOhmPerKm)
  return {
    stiffnessN: wire.stiffnessN ?? areaMm2 * COPPER_STRETCH.modulusNPerMm2,
    expansionPerC: wire.expansionPerC ?? COPPER_STRETCH.expansionPerC,
  }
}

/** A span as strung, on the hottest day reckoned with, and on the coldest. */
interface Ways {
  readonly hanging: Hanging
  readonly hot: Hanging
  readonly cold: Hanging
}

interface Strung {
  readonly spanM: number
  readonly riseM: number
  readonly strungSagM: number
  readonly wire: Wire
  readonly tempC: number
}

function hangWays({ spanM, riseM, strungSagM, wire, tempC }: Strung): Result<Ways> {
  const weight = weightNPerM(wire)
  const stretch = stretchOf(wire)
  const hanging = hangBySag({ spanM, riseM, weightNPerM: weight, sagM: strungSagM })
  if (!hanging.ok) return hanging
  const at = { weightNPerM: weight, horizontalN: hanging.value.horizontalN, tempC }
  const hangAt = (otherC: number) =>
    hang({
      spanM,
      riseM,
      weightNPerM: weight,
      horizontalN: tensionAfterN(spanM, stretch, at, { tempC: otherC }),
    })
  const hot = hangAt(Math.max(tempC, OVERHEAD.hotC))
  if (!hot.ok) return hot
  const cold = hangAt(Math.min(tempC, OVERHEAD.coldC))
  if (!cold.ok) return cold
  return ok({ hanging: hanging.value, hot: hot.value, cold: cold.value })
}

/**
 * The spans of an overhead leg: supports at both its ends and evenly between, each span a catenary.
 *
 * Every span is strung to the same sag at the plan's temperature; on a hot day it sags more, on a cold one it pulls more.
 *
 * @param groundAt height of the ground at a distance along the leg, m; where it is not known the leg is taken as level
 */
export function overheadSpans(
  overhead: Overhead,
  groundAt: (distanceM: number) => number | undefined,
): Result<OverheadLeg> {
  const { lengthM, wire, tempC, sagPct } = overhead
  const supportM = overhead.supportM ?? OVERHEAD.supportM
  const count = spanCount(lengthM, overhead.spanM)
  const spanM = lengthM / count
  const strungSagM = (spanM * sagPct) / 100
  const known = groundAt(0) !== undefined && groundAt(lengthM) !== undefined
  const groundM = (distanceM: number) => (known ? (groundAt(distanceM) ?? 0) : 0)

  // Neighbours with the same rise hang alike: on level ground all of them.
  let hung: { readonly riseM: number; readonly ways: Ways } | undefined
  const spans: OverheadSpan[] = []
  for (let i = 0; i < count; i++) {
    const startM = i * spanM
    const startGroundM = groundM(startM)
    const riseM = groundM(startM + spanM) - startGroundM
    if (riseM !== hung?.riseM) {
      const ways = hangWays({ spanM, riseM, strungSagM, wire, tempC })
      if (!ways.ok) return ways
      hung = { riseM, ways: ways.value }
    }
    const { hanging, hot, cold } = hung.ways
    const startHeightM = startGroundM + supportM
    let lowest = { atM: startM, clearanceM: supportM }
    for (let k = 1; k <= LOOKS; k++) {
      const inM = (spanM * k) / (LOOKS + 1)
      const clearanceM = startHeightM + wireHeightM(hot, inM) - groundM(startM + inM)
      if (clearanceM < lowest.clearanceM) lowest = { atM: startM + inM, clearanceM }
    }
    spans.push({
      startM,
      endM: startM + spanM,
      startHeightM,
      hanging,
      hot,
      coldTensionN: cold.maxTensionN,
      safetyFactor: (wire.breakN ?? Number.POSITIVE_INFINITY) / cold.maxTensionN,
      lowest,
    })
  }
  return ok({ spans, groundAt: groundM })
}

/** The span over a distance along its leg. */
export const spanAt = ({ spans }: OverheadLeg, distanceM: number): OverheadSpan =>
  spans.find(({ endM }) => distanceM <= endM) ?? spans.at(-1)!

/** Height of the wire over the ground on the hottest day at a distance along its leg, m. */
export function hotClearanceM(leg: OverheadLeg, distanceM: number): number {
  const span = spanAt(leg, distanceM)
  return span.startHeightM + wireHeightM(span.hot, distanceM - span.startM) - leg.groundAt(distanceM)
}
