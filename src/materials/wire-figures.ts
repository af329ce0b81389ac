import type { Packing } from './packing'
import {
  countsByLength,
  fewestSpools,
  leastLength,
  longestChainM,
  ROUNDING_M,
  type SpoolKind,
  total,
  usableKinds,
} from './spool-kinds'
import type { WireSpools } from './spool-plan'
import type { WantedLine, WantedWire } from './wanted-wire'

export type UsedSpool = Omit<WireSpools['used'][number], 'spool'>

/** Kinds with what is left of them when some spools are taken. */
export function without(
  kinds: readonly SpoolKind[],
  taken: ReadonlyMap<number, number>,
): readonly SpoolKind[] {
  return usableKinds(kinds, 0).map(({ lengthM, count }) => ({
    lengthM,
    count: count - (taken.get(lengthM) ?? 0),
  }))
}

/** What is carried of one wire, what is left of it, and what is lacking. */
export function figuresOf(
  wanted: WantedWire,
  { bound }: Pick<Packing<unknown>, 'bound'>,
  used: readonly UsedSpool[],
  splices: number,
  notLaid: readonly WantedLine[],
): Omit<WireSpools, 'used'> {
  const { kinds, wasteM, reservePct, kgPerKm } = wanted
  const wireM = (lines: readonly WantedLine[]) => total(lines.map((line) => line.wireM * line.pairs))
  const planM = wireM(wanted.lines)
  const neededM = planM * (1 + reservePct / 100) + wasteM * splices
  const taken = countsByLength(used)
  const inUse = [...taken].map(([lengthM, count]) => ({ lengthM, count }))
  const usedM = total(inUse.map(({ lengthM, count }) => lengthM * count))
  const carry = usableKinds([...inUse, ...besides(without(kinds, taken), neededM - usedM)], 0)
  const carriedM = total(carry.map(({ lengthM, count }) => lengthM * count))
  const shortM = Math.max(neededM - carriedM, notLaid.length > 0 ? planM - longestChainM(kinds, wasteM) : 0)
  return {
    wire: wanted.wire,
    neededM,
    carry,
    splices,
    leftM: total(used.map((spool) => spool.leftM)),
    kg: (carriedM / 1000) * kgPerKm,
    missingM: shortM > ROUNDING_M ? shortM : 0,
    notLaid: notLaid.map((line) => line.id),
    bound: {
      splices: bound.splices,
      spools: bound.spools,
      leftM: Math.max(0, bound.lengthM - (planM - wireM(notLaid)) - wasteM * bound.splices),
    },
  }
}

/** The fewest further spools, and of those the shortest, that make up what is short; all there are where they do not. */
function besides(kinds: readonly SpoolKind[], shortM: number): readonly SpoolKind[] {
  const howMany = fewestSpools(kinds, 0, shortM)
  if (!Number.isFinite(howMany)) return kinds
  const counts = leastLength(kinds, howMany, shortM).found
  return kinds.map(({ lengthM }, k) => ({ lengthM, count: counts?.[k] ?? 0 }))
}
