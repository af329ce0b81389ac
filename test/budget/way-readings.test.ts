import { expect, test } from 'vitest'
import { wayReadings } from '../../src/budget/way-readings'
import { builtInSet } from '../reference/built-in-entry'
import { DRY, OHMS_ONLY, rowOfSets } from '../reference/test-circuit'

const crank = builtInSet('crank-1600')

test('a meter reads the loop of every line on the way', () => {
  // s0 ── 400 Ω ── s1 ── 400 Ω ── s2
  const model = rowOfSets([crank, crank, crank], OHMS_ONLY, 400)
  expect(wayReadings(model, DRY, 's0', 's2')).toMatchObject({ loopOhm: 800, wireM: 800, byEarth: false })
  expect(wayReadings(model, DRY, 's1', 's1')).toMatchObject({ loopOhm: 0, farad: 0 })
})

test('over earth it reads half the loop and both electrodes', () => {
  const model = rowOfSets([crank, crank], OHMS_ONLY, 400)
  const earth = {
    ...model,
    lines: model.lines.map((line) => ({ ...line, electrodeOhms: [30, 50] as const })),
  }
  expect(wayReadings(earth, DRY, 's0', 's1')).toMatchObject({ loopOhm: 200 + 80, byEarth: true })
})

test('no way, no reading', () => {
  const model = rowOfSets([crank, crank], OHMS_ONLY, 400)
  expect(wayReadings({ ...model, lines: [] }, DRY, 's0', 's1')).toBeNull()
})
