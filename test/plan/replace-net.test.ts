import { expect, test } from 'vitest'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { replaceNet } from '../../src/plan/replace-net'
import { at, planOf } from '../terrain/made-plan'

const { plan, line } = planOf([[0, 0], [600, 0]], ['surface']) // biome-ignore format: one line
const OTHER = 'other' as StationId
const NET = { id: 'net' as CircuitId, name: 'Net' }
const SECOND = { id: 'second' as CircuitId, name: 'Second' }
const before = {
  ...plan,
  stations: new Map(plan.stations).set(OTHER, { id: OTHER, name: 'Oak', note: '', position: at([0, 600]) }),
  circuits: new Map([
    [NET.id, { ...NET, lines: [line.id], sets: new Map([[line.from, 'crank-1000']]), supply: null }],
  ]),
}
const ring = (['n1', 'n2', 'n3'] as LineId[]).map((id, i) => {
  const stations = [line.from, line.to, OTHER]
  return { id, from: stations[i]!, to: stations[(i + 1) % 3]!, bends: [], lays: ['surface' as const] }
})

test('a net in the place of a circuit takes its telephones, and its old lines go', () => {
  const after = replaceNet(before, ring, 'wd-1', NET)
  expect([...after.lines.keys()]).toEqual(['n1', 'n2', 'n3'])
  expect(after.circuits.get(NET.id)).toMatchObject({ name: 'Net', lines: ['n1', 'n2', 'n3'] })
  expect([...after.circuits.get(NET.id)!.sets]).toEqual([[line.from, 'crank-1000']])
})

test('a line that carries another circuit stays', () => {
  const shared = {
    ...before,
    circuits: new Map(before.circuits).set(SECOND.id, {
      ...SECOND,
      lines: [line.id],
      sets: new Map(),
      supply: null,
    }),
  }
  const after = replaceNet(shared, ring, 'wd-1', NET)
  expect(after.lines.has(line.id)).toBe(true)
  expect(after.circuits.get(SECOND.id)?.lines).toEqual([line.id])
})

test('a new net leaves every line and circuit as it was, and knows the telephones that stand at its stations', () => {
  const after = replaceNet(before, ring, 'wd-1', SECOND)
  expect(after.lines.size).toBe(4)
  expect(after.circuits.get(NET.id)).toBe(before.circuits.get(NET.id))
  expect([...after.circuits.get(SECOND.id)!.sets]).toEqual([[line.from, 'crank-1000']])
})

test('a supply stays where its station is still joined, and only there', () => {
  const supplied = (station: StationId) => ({
    ...before,
    circuits: new Map([[NET.id, { ...before.circuits.get(NET.id)!, supply: { type: 'x', at: station } }]]),
  })
  expect(replaceNet(supplied(line.to), ring, 'wd-1', NET).circuits.get(NET.id)?.supply?.at).toBe(line.to)
  const without = ring.slice(1, 2)
  expect(replaceNet(supplied(line.from), without, 'wd-1', NET).circuits.get(NET.id)?.supply).toBeNull()
})
