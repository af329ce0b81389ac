import { expect, test } from 'vitest'
import type { CircuitId, LineId } from '../../src/plan/id'
import { drawNet, rerouteLine } from '../../src/plan/route-edits'
import { at, planOf } from '../terrain/made-plan'

const { plan, line } = planOf(
  [
    [0, 0],
    [300, 50],
    [600, 0],
  ],
  ['overhead', 'buried'],
)

test('a line led another way is laid as that way says, between the same stations', () => {
  const bends = [at([100, 100]), at([300, 200]), at([500, 100])]
  const lays = ['surface', 'buried', 'surface', 'water'] as const
  const moved = rerouteLine(plan, line.id, { bends, lays }).lines.get(line.id)!
  expect(moved.bends).toHaveLength(3)
  expect(moved.legs.map(({ lay }) => lay)).toEqual(lays)
  expect([moved.from, moved.to, moved.wire]).toEqual([line.from, line.to, line.wire])
  expect(rerouteLine(plan, 'none' as LineId, { bends, lays })).toBe(plan)
})

test('a net drawn is its lines and a circuit over them', () => {
  const circuit = { id: 'c' as CircuitId, name: 'Net' }
  const drawn = drawNet(
    plan,
    [{ id: 'n1' as LineId, from: line.from, to: line.to, bends: [], lays: ['surface'] }],
    'wd-1',
    circuit,
  )
  expect(drawn.lines.get('n1' as LineId)).toMatchObject({
    legs: [{ lay: 'surface' }],
    pairs: 1,
    wire: 'wd-1',
  })
  expect(drawn.circuits.get(circuit.id)).toEqual({ ...circuit, lines: ['n1'], sets: new Map(), supply: null })
  expect(() =>
    drawNet(
      drawn,
      [{ id: 'n1' as LineId, from: line.from, to: line.to, bends: [], lays: ['surface'] }],
      'x',
      circuit,
    ),
  ).toThrow()
})

test('a net in the place of a circuit keeps its telephones', () => {
  const circuit = {
    id: 'c' as CircuitId,
    name: 'Net',
    lines: [line.id],
    sets: new Map([[line.from, 'set']]),
    supply: null,
  }
  const before = { ...plan, circuits: new Map([[circuit.id, circuit]]) }
  const drawn = drawNet(
    before,
    [{ id: 'n1' as LineId, from: line.from, to: line.to, bends: [], lays: ['surface'] }],
    'wd-1',
    circuit,
  )
  expect(drawn.circuits.get(circuit.id)).toEqual({ ...circuit, lines: ['n1'] })
})
