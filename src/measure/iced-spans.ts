import type { Loading } from '../catalog/overhead-loading'
import type { Wire } from '../catalog/wire'
import { hang, tensionAfterN, wireHeightM } from './catenary'
import { loadedWeight, weightNPerM } from './ice-and-wind'
import { LOOKS, type OverheadLeg, type OverheadSpan, stretchOf } from './overhead-spans'

/** What hangs, the temperature at which it was strung, °C, and what it is to bear. */
export interface Loaded {
  readonly wire: Wire
  readonly tempC: number
  readonly loading: Loading
}

/** Ice still hangs on the wire at this temperature, °C, and stretches it most: NESC Rule 232, 32 °F with ice and no wind. */
const THAW_C = 0

/** One span under ice and wind. */
export interface LoadedSpan {
  /** Sag under the ice alone, as it begins to thaw, m. */
  readonly icedSagM: number
  /** Greatest tension under ice and wind together, N. */
  readonly tensionN: number
  /** Height of the iced wire over its first support at a distance from it, m. */
  readonly heightM: (distanceM: number) => number
}

/**
 * A span as it hangs and pulls under ice and wind, by the change-of-state equation from how it was strung.
 *
 * A wire that is pulled beyond its elastic range stretches for good and sags more than this says. Range: as of `tensionAfterN`.
 */
export function spanUnder(span: Pick<OverheadSpan, 'hanging'>, { wire, tempC, loading }: Loaded): LoadedSpan {
  const { spanM, riseM, horizontalN } = span.hanging
  const strung = { weightNPerM: weightNPerM(wire), horizontalN, tempC }
  const stretch = stretchOf(wire)
  const under = (weight: number, atC: number) => {
    const pull = tensionAfterN(spanM, stretch, strung, { weightNPerM: weight, tempC: atC })
    const result = hang({ spanM, riseM, weightNPerM: weight, horizontalN: pull })
    if (!result.ok) throw new RangeError(result.problems[0]!.message)
    return result.value
  }
  const iced = under(loadedWeight(wire, { ...loading, windPa: 0 }).plumbNPerM, THAW_C)
  return {
    icedSagM: iced.sagM,
    tensionN: under(loadedWeight(wire, loading).resultantNPerM, loading.tempC).maxTensionN,
    heightM: (distanceM) => wireHeightM(iced, distanceM),
  }
}

/** Where a leg under ice comes nearest to the ground, and the share of its strength to which ice and wind pull it. */
export function legUnder(
  { spans, groundAt }: OverheadLeg,
  loaded: Loaded,
): { readonly lowest: { readonly atM: number; readonly clearanceM: number }; readonly pulledShare: number } {
  let lowest = { atM: 0, clearanceM: Number.POSITIVE_INFINITY }
  let tensionN = 0
  let known: { readonly hanging: OverheadSpan['hanging']; readonly under: LoadedSpan } | undefined
  for (const span of spans) {
    // Neighbours that hang alike share their very hanging.
    if (known?.hanging !== span.hanging) known = { hanging: span.hanging, under: spanUnder(span, loaded) }
    const { under } = known
    tensionN = Math.max(tensionN, under.tensionN)
    for (let k = 0; k <= LOOKS + 1; k++) {
      const inM = (span.hanging.spanM * k) / (LOOKS + 1)
      const clearanceM = span.startHeightM + under.heightM(inM) - groundAt(span.startM + inM)
      if (clearanceM < lowest.clearanceM) lowest = { atM: span.startM + inM, clearanceM }
    }
  }
  return { lowest, pulledShare: tensionN / (loaded.wire.breakN ?? tensionN) }
}
