import { readFileSync } from 'node:fs'
import { afterEach, expect, test, vi } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import type { TerrainJobs } from '../../src/jobs/terrain-jobs'
import type { Plan } from '../../src/plan/plan'
import { setTitle } from '../../src/plan/text-edits'
import { demoGround } from '../../src/storage/demo'

afterEach(() => vi.unstubAllGlobals())

const planOf = (text: string): Plan => {
  const result = parsePlan(text)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

test('the invented hills are the demo’s, also once it was changed and kept, and no other plan’s that lies there', async () => {
  vi.stubGlobal('fetch', async () => new Response('heights'))
  const find = demoGround({} as TerrainJobs)
  const demo = planOf(readFileSync('public/demo.plan.geojson', 'utf8'))
  const names = async (plan: Plan) => (await find(plan)).map(({ key }) => key)
  expect(await names(demo)).toEqual(['demo'])
  expect(await names(planOf(formatPlan(setTitle(demo, 'Mine now'))))).toEqual(['demo'])
  const { unknown: _, ...other } = demo
  expect(await names(other)).toEqual([])
})
