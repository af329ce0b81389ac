import { lineName, type Plan, verticesOf } from '../../plan/plan'
import type { Places } from './places'

/** What other programs can take of a plan: its stations as points, its lines as paths. */
export const placesOfPlan = (plan: Plan): Places => ({
  points: [...plan.stations.values()].map(({ name, note, position }) => ({ name, note, position })),
  paths: [...plan.lines.values()].map((line) => ({
    name: lineName(plan, line),
    note: '',
    positions: verticesOf(plan, line),
  })),
})
