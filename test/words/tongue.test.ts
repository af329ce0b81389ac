import { expect, test } from 'vitest'
import { tongueOf } from '../../src/words/tongue'
import { demoPlan } from '../sheet/demo-source'

const plan = demoPlan()
const metric = tongueOf(plan, 'metric')
const us = tongueOf(plan, 'us')

test('a handbook’s figure is told in the units it is read in', () => {
  // US Army Signal subcourse SS0440, p. 1-25: 18 ft over a primary road; California GO 95, rule 113.4: 170 lb.
  expect(us.height(18 * 0.3048)).toBe('18 ft')
  expect(metric.height(18 * 0.3048)).toBe('5.5 m')
  expect(us.force(756)).toBe('170 lbf')
  expect(metric.force(756)).toBe('756 N')
})

test('whatever an id stands for is told by its name', () => {
  const line = [...plan.lines.values()][0]!
  const circuit = [...plan.circuits.values()][0]!
  expect(metric.name(line.id)).toBe(`${metric.name(line.from)} – ${metric.name(line.to)}`)
  expect(metric.name(line.from)).toBe(plan.stations.get(line.from)!.name)
  expect(metric.name(circuit.id)).toBe(circuit.name)
  expect(metric.name('nothing')).toBe('nothing')
})
