import type { Plan } from '../plan/plan'
import { SETTINGS } from '../plan/settings-schema'
import { unmarked } from '../schema/exact-members'
import { giveMembers } from '../schema/kept'
import { hazardFeature, lineFeature, stationFeature } from './file-features'
import { FORMAT, VERSION } from './parse-plan'

/** The plan as the text of its file: two-space JSON in a stable order, with every member that was not known when it was read. */
export function formatPlan(plan: Plan): string {
  const { catalog, unknown = {} } = plan
  const settings = { ...plan, catalog: { ...catalog, unknown: unknown.catalog } }
  const file = {
    type: 'FeatureCollection',
    plan: giveMembers({ format: FORMAT, version: VERSION }, SETTINGS.entries, settings, unknown.plan),
    features: [
      ...[...plan.stations.values()].map(stationFeature),
      ...[...plan.lines.values()].map((line) => lineFeature(plan, line)),
      ...[...plan.hazards.values()].map(hazardFeature),
      ...(unknown.features ?? []),
    ],
    ...unknown.file,
  }
  return `${unmarked(JSON.stringify(file, null, 2))}\n`
}
