import { packAtWill } from './pack-at-will'
import { packStock } from './pack-stock'
import type { Cost, Group, Packable, Packing } from './packing'
import { fewestSpools, longestChainM, ROUNDING_M, total, usableKinds } from './spool-kinds'

/** More spools than this are no plan that anyone carries out: they are not looked at. */
export const MOST_SPOOLS = 20_000
/** More runs than this are not weighed against each other all at once. */
export const MOST_RUNS = 5000

/**
 * Shares spools out among runs of wire: the fewest splices, then the fewest spools, then the least length of spools.
 *
 * @param packable kinds in any order; either all of them limited in number, or none
 * @returns undefined where the spools do not reach, where it would take more than 20,000 of them, or where a stock is to serve more
 * than 5,000 runs; spools that can be had at will are shared out among so many runs at a time
 */
export function packSpools<C>(packable: Packable<C>): Packing<C> | undefined {
  const { needsM, wasteM } = packable
  const none = { splices: 0, spools: 0, lengthM: 0 }
  if (needsM.length === 0) return { groups: [], cuts: [], cost: none, bound: none }
  const kinds = usableKinds(packable.kinds, wasteM)
  if (kinds.length === 0 || total(needsM) > longestChainM(kinds, wasteM) + ROUNDING_M) return undefined
  const atWill = kinds.every((kind) => kind.count === Number.POSITIVE_INFINITY)
  if (atWill && needsM.length > MOST_RUNS) return packInParts({ ...packable, kinds })
  if (needsM.length > MOST_RUNS || fewestSpools(kinds, wasteM, total(needsM) - wasteM) > MOST_SPOOLS)
    return undefined
  return atWill ? packAtWill({ ...packable, kinds }) : packStock({ ...packable, kinds })
}

/** So many runs that they are shared out part by part. What splices there must be is the sum; spools may be shared between parts. */
function packInParts<C>({ needsM, kinds, wasteM, cut }: Packable<C>): Packing<C> | undefined {
  const groups: Group[] = []
  const cuts: C[] = []
  const costs: Cost[] = []
  const bounds: Cost[] = []
  for (let first = 0; first < needsM.length; first += MOST_RUNS) {
    const shifted = (group: Group): Group => ({ ...group, runs: group.runs.map((run) => first + run) })
    const part = packSpools({
      needsM: needsM.slice(first, first + MOST_RUNS),
      kinds,
      wasteM,
      cut: (group) => cut(shifted(group)),
    })
    if (!part) return undefined
    for (const group of part.groups) groups.push(shifted(group))
    for (const own of part.cuts) cuts.push(own)
    costs.push(part.cost)
    bounds.push(part.bound)
  }
  const sum = (of: readonly Cost[], figure: keyof Cost) => total(of.map((each) => each[figure]))
  const splices = sum(bounds, 'splices')
  const wireM = total(needsM)
  return {
    groups,
    cuts,
    cost: {
      splices: sum(costs, 'splices'),
      spools: sum(costs, 'spools'),
      lengthM: sum(costs, 'lengthM'),
    },
    bound: {
      splices,
      spools: fewestSpools(kinds, 0, wireM + wasteM * splices),
      lengthM: wireM + wasteM * splices,
    },
  }
}
