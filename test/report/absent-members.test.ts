import { expect, test } from 'vitest'
import { reportPlan } from '../../src/report/report-plan'
import { planOf, QUARRY_TEXT } from '../files/quarry-net'

test('members of real sets, worn wire and splices that say nothing change no figure of the report', () => {
  const file = JSON.parse(QUARRY_TEXT)
  const plain = structuredClone(file)
  Object.assign(file.plan.allowances, { spliceOhms: 0, spliceMicroS: 0 })
  for (const { properties } of file.features) if (properties.kind === 'line') properties.worn = false
  for (const set of file.plan.catalog.sets) set.offHook.dropVolts = 0
  for (const entries of Object.values(file.plan.catalog) as { spread?: object }[][])
    if (Array.isArray(entries)) for (const entry of entries) entry.spread = {}
  expect(file.plan.catalog.sets.length + file.plan.circuits.length).toBeGreaterThan(0)
  expect(reportPlan(planOf(JSON.stringify(file)))).toEqual(reportPlan(planOf(JSON.stringify(plain))))
})
