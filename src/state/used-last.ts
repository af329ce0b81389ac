import type { Equipment } from '../plan/equip-line'
import type { Plan } from '../plan/plan'
import type { Store } from './store'

/** The wire that was drawn last; on a plan without lines, the first of the catalog. */
export function wireUsedLast({ catalog }: Store, plan: Plan): string {
  const last = [...plan.lines.values()].at(-1)?.wire
  const [first] = catalog.peek().wires.keys()
  return last ?? first ?? ''
}

/**
 * The telephone and the supply that were used last; on a plan without telephones, a set that feeds itself and rings by its crank. A board or an
 * exchange is no guide: it joins many lines, and a new line between two telephones needs none.
 */
export function equipmentUsedLast({ catalog }: Store, plan: Plan): Equipment {
  const joinsLines = (supply: string | undefined) => {
    const kind = supply && catalog.peek().supplies.get(supply)?.kind
    return kind === 'board' || kind === 'exchange'
  }
  const last = [...plan.circuits.values()].findLast(
    ({ sets, supply }) => sets.size > 0 && !joinsLines(supply?.type),
  )
  const used = last && [...last.sets.values()].at(-1)
  if (used) return { set: used, supply: last.supply?.type ?? null }
  const whole = [...catalog.peek().sets.values()].find(
    ({ talk, generator, ringer }) => talk !== 'common' && generator && ringer,
  )
  return { set: whole?.id ?? '', supply: null }
}
