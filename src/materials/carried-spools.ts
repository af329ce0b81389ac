import { spoolOf } from '../catalog/spools'

/** Who carries a spool: what one person bears at most, kg, how many of a crew there are, and the empty reel as a share of its wire. */
export interface Carriers {
  readonly perPersonKg: number
  readonly crew: number
  readonly reelPct: number
}

/** Two carry a reel on an axle between them; more than two never do. Common practice: RL-27 and its like have two handles. */
const MOST_ON_AN_AXLE = 2

/** Mass of a full spool, kg: the wire and its container, or the usual share of the wire where the container is not known. */
export const fullSpoolKg = (wire: string, lengthM: number, kgPerKm: number, reelPct: number): number => {
  const wireKg = (lengthM / 1000) * kgPerKm
  return wireKg + (spoolOf(wire, lengthM)?.emptyKg ?? (wireKg * reelPct) / 100)
}

/**
 * The standard lengths of a wire that a crew on foot can carry, m: one person or two with an axle, each at their limit. Where none of
 * them is light enough it is the lightest, since something must carry the wire. Lengths whose container the catalog does not know
 * stay: a plan's own wire comes as its owner says.
 */
export function carriedLengthsM(
  wire: { readonly id: string; readonly kgPerKm: number; readonly spoolsM: readonly number[] },
  { perPersonKg, crew, reelPct }: Carriers,
): readonly number[] {
  const mostKg = perPersonKg * Math.max(1, Math.min(MOST_ON_AN_AXLE, crew))
  const carried = wire.spoolsM.filter(
    (lengthM) => !spoolOf(wire.id, lengthM) || fullSpoolKg(wire.id, lengthM, wire.kgPerKm, reelPct) <= mostKg,
  )
  return carried.length > 0 || wire.spoolsM.length === 0 ? carried : [Math.min(...wire.spoolsM)]
}
