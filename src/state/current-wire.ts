import type { Plan } from '../plan/plan'
import type { Store } from './store'

/** The wire that was drawn last; on a plan without lines, the first of the catalog. */
export function currentWire({ catalog }: Store, plan: Plan): string {
  const last = [...plan.lines.values()].at(-1)?.wire
  const [first] = catalog.peek().wires.keys()
  return last ?? first ?? ''
}
