import { readFileSync } from 'node:fs'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mergeCatalogs } from '../../src/catalog/catalog'
import { bytesFrom } from '../../src/files/byte-source'
import { readElevationGrid } from '../../src/files/elevation-files'
import { parsePlan } from '../../src/files/parse-plan'
import { planFingerprint } from '../../src/files/plan-fingerprint'
import type { Plan } from '../../src/plan/plan'
import { reportPlan } from '../../src/report/report-plan'
import { WHOLE_NET } from '../../src/sheet/paper-scope'
import type { PaperSource } from '../../src/sheet/paper-source'
import type { ElevationGrid } from '../../src/terrain/elevation-grid'
import { planExtent } from '../../src/terrain/plan-extent'

export function demoPlan(): Plan {
  const result = parsePlan(readFileSync('public/demo.plan.geojson', 'utf8'))
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join('\n'))
  return result.value
}

/** The elevation grid that the program shows beneath the demo: it lengthens lines and draws profiles. */
export async function demoGrid(): Promise<ElevationGrid> {
  const bytes = new Uint8Array(readFileSync('public/demo.terrain.tif'))
  const result = await readElevationGrid(bytesFrom('demo.terrain.tif', bytes), planExtent(demoPlan()))
  if (!result.ok || !result.value) throw new Error('no ground for the demo')
  return result.value
}

export const sourceOf = (plan: Plan): PaperSource => ({
  plan,
  report: reportPlan(plan),
  catalog: mergeCatalogs(BUILT_IN, plan.catalog),
  ground: undefined,
  odds: new Map(),
  far: null,
  ways: null,
  fingerprint: planFingerprint(plan),
  scope: WHOLE_NET,
  labels: '',
  program: 'https://camp.example/fieldpair/',
  system: 'metric',
  date: '2026-11-25',
})
