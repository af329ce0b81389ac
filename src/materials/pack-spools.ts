import { packAtWill } from './pack-at-will'
import { packStock } from './pack-stock'
import type { Packable, Packing } from './packing'
import { fewestSpools, longestChainM, ROUNDING_M, total, usableKinds } from './spool-kinds'

/** More spools than this, or more runs, are no plan that anyone carries out: they are not looked at. */
export const MOST_SPOOLS = 20_000
const MOST_RUNS = 5000

/**
 * Shares spools out among runs of wire: the fewest splices, then the fewest spools, then the least length of spools.
 *
 * @param packable kinds in any order; either all of them limited in number, or none
 * @returns undefined where the spools do not reach, or where it would take more than 20,000 of them or there are more than 5,000 runs
 */
export function packSpools(packable: Packable): Packing | undefined {
  const { needsM, wasteM } = packable
  const none = { splices: 0, spools: 0, lengthM: 0 }
  if (needsM.length === 0) return { groups: [], cost: none, bound: none }
  const kinds = usableKinds(packable.kinds, wasteM)
  if (kinds.length === 0 || total(needsM) > longestChainM(kinds, wasteM) + ROUNDING_M) return undefined
  if (needsM.length > MOST_RUNS || fewestSpools(kinds, wasteM, total(needsM) - wasteM) > MOST_SPOOLS)
    return undefined
  return kinds.every((kind) => kind.count === Number.POSITIVE_INFINITY)
    ? packAtWill({ ...packable, kinds })
    : packStock({ ...packable, kinds })
}
