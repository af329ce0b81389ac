import { parsePlan } from '../files/parse-plan'
import type { TerrainJobs } from '../jobs/terrain-jobs'
import type { Plan } from '../plan/plan'
import { planExtent } from '../terrain/plan-extent'
import type { GridSource } from './grid-source'

/** The invented country of the demo: what public/demo.terrain.tif covers, degrees. */
const WEST_DEG = 66.96
const EAST_DEG = 67.09
const SOUTH_DEG = 48.578
const NORTH_DEG = 48.648

/** Reads the demo plan. Undefined where it cannot be fetched. */
export async function loadDemo(): Promise<Plan | undefined> {
  const text = await fetched('./demo.plan.geojson').then((response) => response?.text())
  const result = text === undefined ? undefined : parsePlan(text)
  return result?.ok ? result.value : undefined
}

/** Whether a plan lies on the demo's ground, or beside it. */
function liesOnDemo(plan: Plan): boolean {
  const extent = planExtent(plan)
  if (!extent || extent.eastDeg < WEST_DEG || extent.westDeg > EAST_DEG) return false
  return extent.northDeg > SOUTH_DEG && extent.southDeg < NORTH_DEG
}

/** Gives the demo's ground to every plan that lies on it. */
export function demoGround(jobs: TerrainJobs): (plan: Plan) => Promise<readonly GridSource[]> {
  let found: Promise<readonly GridSource[]> | undefined
  return async (plan) => {
    if (!liesOnDemo(plan)) return []
    found ??= loadDemoGround(jobs)
    return found
  }
}

async function loadDemoGround(jobs: TerrainJobs): Promise<readonly GridSource[]> {
  const response = await fetched('./demo.terrain.tif')
  if (!response) return []
  const file = new File([await response.blob()], 'demo.terrain.tif')
  return [
    {
      key: 'demo',
      name: 'The demo’s ground, invented',
      isKept: false,
      sizeBytes: () => file.size,
      read: (extent, watch) => jobs.readGrid(file, extent, watch),
    },
  ]
}

async function fetched(path: string): Promise<Response | undefined> {
  const response = await fetch(path).catch(() => undefined)
  return response?.ok ? response : undefined
}
