import { expect, test } from 'vitest'
import { EMPTY_PLAN } from '../../src/plan/plan'
import { addStation } from '../../src/plan/station-edits'
import { newCircuitId, newHazardId, newLineId, newStationId } from '../../src/state/new-id'

test('a thousand new stations all have ids of their own', () => {
  let plan = EMPTY_PLAN
  for (let i = 0; i < 1000; i++) {
    plan = addStation(plan, { id: newStationId(plan), name: `Station ${i}`, position: [i / 100, 0] })
  }
  expect(plan.stations.size).toBe(1000)
})

test('an id tells what it names', () => {
  expect(newStationId(EMPTY_PLAN)).toMatch(/^station-[0-9a-z]{6}$/)
  expect(newLineId(EMPTY_PLAN)).toMatch(/^line-/)
  expect(newHazardId(EMPTY_PLAN)).toMatch(/^hazard-/)
  expect(newCircuitId(EMPTY_PLAN)).toMatch(/^circuit-/)
})
