import { parsePlan } from '../files/parse-plan'
import type { TerrainJobs } from '../jobs/terrain-jobs'
import type { Plan } from '../plan/plan'
import type { GridSource } from './grid-source'

/** By this member of the plan, which the program else does not know and so keeps, the demo is told from a plan that lies where it does. */
const MARK = 'demoGround'

/** Reads the demo plan. Undefined where it cannot be fetched. */
export async function loadDemo(): Promise<Plan | undefined> {
  const text = await fetched('./demo.plan.geojson').then((response) => response?.text())
  const result = text === undefined ? undefined : parsePlan(text)
  return result?.ok ? result.value : undefined
}

const isDemo = (plan: Plan): boolean => plan.unknown?.plan?.[MARK] === true

/** Gives the demo's invented ground to the demo, and to nothing else that lies there. */
export function demoGround(jobs: TerrainJobs): (plan: Plan) => Promise<readonly GridSource[]> {
  let found: Promise<readonly GridSource[]> | undefined
  return async (plan) => {
    if (!isDemo(plan)) return []
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
