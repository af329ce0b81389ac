import type { Places } from '../../plan/places'
import { lineName, type Plan, verticesOf } from '../../plan/plan'

/** What other programs can take of a plan: its stations as points, its lines as paths. */
export const placesOfPlan = (plan: Plan): Places => ({
  points: [...plan.stations.values()].map(({ name, note, position }) => ({
    name,
    note,
    layer: '',
    position,
  })),
  paths: [...plan.lines.values()].map((line) => ({
    name: lineName(plan, line),
    note: '',
    layer: '',
    positions: verticesOf(plan, line),
  })),
})
