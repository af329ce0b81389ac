import { expect, test } from 'vitest'
import { setSupply } from '../../src/plan/circuit-edits'
import type { CircuitId, StationId } from '../../src/plan/id'
import { setReturn } from '../../src/plan/line-edits'
import { applyChange } from '../../src/report/remedy-changes'
import { drawLine, drawnNet, l, mended } from '../plan/drawn-net'
import { builtInSupply } from '../reference/built-in-entry'

const drawn = drawLine(drawnNet(), 'ab', [])
const net = [...drawn.circuits.keys()][0] as CircuitId

test('cells in series add their volts and their ohms alike', () => {
  const battery = builtInSupply('two-9-volt')
  const plan = setSupply(drawn, net, { type: battery.id, at: 'a' as StationId })
  const after = applyChange(plan, net, { kind: 'more-cells', cells: 1 })
  const [stronger] = after.catalog.supplies
  // Two cells of 9 V become three: half as much again of all that adds up along the row.
  expect(stronger!.volts).toBeCloseTo(27, 9)
  expect(stronger!.ohms).toBeCloseTo(battery.ohms * 1.5, 9)
  expect(after.circuits.get(net)!.supply?.type).toBe(stronger!.id)
})

test('more rods lower the ohms at both ends by the published factor', () => {
  const plan = mended(setReturn(drawn, l('ab'), 'earth', [60, 90]))
  const after = applyChange(plan, net, { kind: 'more-rods', line: l('ab'), rods: 2 })
  // IEEE Std 142, table 14: two rods come to 1.16 / 2 of one.
  const [from, to] = after.lines.get(l('ab'))!.electrodeOhms!
  expect(from).toBeCloseTo(60 * 0.58, 6)
  expect(to).toBeCloseTo(90 * 0.58, 6)
})
