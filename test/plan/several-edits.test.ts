import { expect, test } from 'vitest'
import type { Position } from '../../src/geo/position'
import { setSet, setSupply } from '../../src/plan/circuit-edits'
import { copySeveral, moveSeveral, removeSeveral, wireSeveral } from '../../src/plan/several-edits'
import { newCircuitId, newLineId, newStationId } from '../../src/state/new-id'
import { c, circuitsIn, drawLine, drawnNet, l, s } from './drawn-net'

//  a ──·── b ───── c   and c ── d apart from what is taken
const drawn = drawLine(drawLine(drawLine(drawnNet(), 'ab', [[10.005, 50.001]]), 'bc'), 'cd')
const net = setSupply(
  setSet(setSet(drawn, c('c-ab'), s('a'), 'crank-1600'), c('c-ab'), s('b'), 'crank-1600'),
  c('c-ab'),
  {
    type: 'feed-48',
    at: s('a'),
  },
)
const several = { stations: [s('a'), s('b')], lines: [l('ab')] }
const east = ([lon, lat]: Position): Position => [lon + 1, lat]

test('several move by the same step, bends and all, and the rest stays', () => {
  const plan = moveSeveral(net, several, east)
  expect(plan.stations.get(s('a'))!.position).toEqual([11, 50])
  expect(plan.lines.get(l('ab'))!.bends).toEqual([[11.005, 50.001]])
  expect(plan.stations.get(s('c'))).toBe(net.stations.get(s('c')))
})

test('several lines take another wire in one go', () => {
  const plan = wireSeveral(net, { stations: [], lines: [l('ab'), l('cd')] }, 'wd-36')
  expect([...plan.lines.values()].map(({ wire }) => wire)).toEqual(['wd-36', 'wd-1a', 'wd-36'])
})

test('several are removed with what hangs on them', () => {
  const plan = removeSeveral(net, several)
  expect([...plan.lines.keys()]).toEqual(['cd'])
  expect(circuitsIn(plan)).toEqual(['c-ab: cd'])
})

test('a copy brings ends, telephones and supply along, in a circuit of its own', () => {
  const ids = { station: newStationId, line: newLineId, circuit: newCircuitId }
  const { plan, copies } = copySeveral(net, { stations: [], lines: [l('ab')] }, east, ids)
  expect(plan.stations.size).toBe(net.stations.size + 2)
  const line = plan.lines.get(copies.lines[0]!)!
  expect(line).toMatchObject({ from: copies.stations[0], to: copies.stations[1], bends: [[11.005, 50.001]] })
  const circuit = [...plan.circuits.values()].at(-1)!
  expect(circuit).toMatchObject({
    name: 'A 2 – B 2',
    lines: [line.id],
    supply: { type: 'feed-48', at: line.from },
  })
  expect([...circuit.sets.keys()]).toEqual(copies.stations)
  expect(plan.circuits.get(c('c-ab'))).toBe(net.circuits.get(c('c-ab')))
})
