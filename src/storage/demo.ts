import { bytesFrom } from '../files/byte-source'
import { parsePlan } from '../files/parse-plan'
import type { Plan } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import { planExtent } from '../terrain/plan-extent'

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
export function liesOnDemo(plan: Plan): boolean {
  const extent = planExtent(plan)
  if (!extent || extent.eastDeg < WEST_DEG || extent.westDeg > EAST_DEG) return false
  return extent.northDeg > SOUTH_DEG && extent.southDeg < NORTH_DEG
}

/** The demo's ground. Undefined where it cannot be fetched. */
export async function loadDemoGround(): Promise<Ground | undefined> {
  const [response, { groundFromFiles }] = await Promise.all([
    fetched('./demo.terrain.tif'),
    import('../files/elevation-files'),
  ])
  if (!response) return undefined
  const bytes = new Uint8Array(await response.arrayBuffer())
  const result = await groundFromFiles([bytesFrom('demo.terrain.tif', bytes)])
  return result.ok ? result.value : undefined
}

async function fetched(path: string): Promise<Response | undefined> {
  const response = await fetch(path).catch(() => undefined)
  return response?.ok ? response : undefined
}
