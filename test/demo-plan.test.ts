import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { formatPlan } from '../src/files/format-plan'
import { parsePlan } from '../src/files/parse-plan'
import { HAZARD_KINDS } from '../src/plan/hazard-schema'
import { LAYS } from '../src/plan/lays'
import { reportPlan } from '../src/report/report-plan'
import { demoReport } from './command/demo-report'

const text = readFileSync('public/demo.plan.geojson', 'utf8')
const result = parsePlan(text)
if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 2))
const plan = result.value
const report = reportPlan(plan)

describe('the demo plan', () => {
  test('is read without a fault, and written back as the same plan', () => {
    expect(parsePlan(formatPlan(plan))).toEqual(result)
  })

  test('shows every lay, every kind of hazard, and every kind of supply', () => {
    const lays = new Set([...plan.lines.values()].flatMap(({ legs }) => legs.map(({ lay }) => lay)))
    expect([...lays].sort()).toEqual([...LAYS].sort())
    const hazards = new Set([...plan.hazards.values()].map(({ hazard }) => hazard))
    expect([...hazards].sort()).toEqual([...HAZARD_KINDS].sort())
    const supplies = [...plan.circuits.values()].map(({ supply }) => supply?.type ?? 'local battery')
    expect(supplies).toEqual([
      'local battery',
      'feed-48',
      'ringdown-24',
      'two-9-volt-led',
      'board-4-keys-drops',
    ])
  })

  test('works today but for one circuit that is thin, and in the worst weather some of it fails', () => {
    expect(report.circuits.map(({ verdict }) => verdict)).toEqual([
      'works',
      'works',
      'thin',
      'works',
      'works',
    ])
    expect(new Set(report.circuits.map(({ worst }) => worst.verdict))).toEqual(new Set(['works', 'fails']))
  })

  test('has at least three remedies for each circuit that fails in the worst weather', async () => {
    const { circuits } = await demoReport()
    for (const { id, worst, remedies } of circuits) {
      if (worst.verdict === 'fails') expect(remedies.length, id).toBeGreaterThanOrEqual(3)
    }
  })

  test('stands on its own ground, so that every leg follows the terrain', async () => {
    const { lines } = await demoReport('--terrain', 'public/demo.terrain.tif')
    for (const { id, legs, groundM, mapM } of lines) {
      expect(
        legs.every(({ onGrid }) => onGrid),
        id,
      ).toBe(true)
      expect(groundM, id).toBeGreaterThan(mapM)
    }
  })
})
