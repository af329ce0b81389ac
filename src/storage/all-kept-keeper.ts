import type { Drafts } from './drafts'
import type { Keeper } from './keeper'

/** All that is kept at once, out and back in; loaded when it is asked for. */
export const allKeptKeeper = (drafts: () => Drafts | null): Pick<Keeper, 'allKept' | 'takeIn'> => ({
  allKept: async () => {
    const kept = drafts()
    return kept ? (await import('./all-kept')).allKept(kept) : { plans: [], versions: [] }
  },
  takeIn: async (all) => {
    const kept = drafts()
    if (!kept) return { plans: 0, versions: 0, known: 0, unreadable: 0 }
    return (await import('./all-kept')).takeIn(kept, all)
  },
})
