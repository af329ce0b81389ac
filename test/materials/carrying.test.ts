import { expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mergeCatalogs } from '../../src/catalog/catalog'
import { carryingOf } from '../../src/materials/carrying'
import { hoursOfLine } from '../../src/materials/hours'
import { DEFAULT_LOADS } from '../../src/materials/load-allowances'
import { measurePlan } from '../../src/measure/measure-line'
import { drawnNet, l } from '../plan/drawn-net'

const catalog = mergeCatalogs(BUILT_IN, { wires: [], sets: [], supplies: [] })
// a ── b ── c and b ── d: wire is carried from b. Each line is 0.01° of longitude at 50° N, some 717 m, but bd of 1434 m.
const plan = drawnNet('ab', 'bc', 'bd', 'ef')
const measured = measurePlan(plan)
const carrying = (id: string, perPersonKg: number, people = 4) => {
  const row = carryingOf(plan, measured, catalog, { ...DEFAULT_LOADS, perPersonKg, people, crews: 1 })
  return row[[...plan.lines.keys()].indexOf(l(id))]!
}
const groundM = (id: string) => measured.get(l(id))!.groundM

test('a line that begins at the depot is walked once out while laid and once home', () => {
  const { trips, walkM } = carrying('bc', 22)
  expect(trips).toBe(1)
  expect(walkM).toBeCloseTo(groundM('bc'), 6)
})

test('a line far off is walked to and from', () => {
  // From b to e are three stations in the row.
  const { walkM } = carrying('ef', 22)
  expect(walkM).toBeCloseTo(2 * 3 * groundM('ab') + groundM('ef'), 0)
})

test('what one load does not carry is fetched: from the middle of the line, on the whole', () => {
  // 1434 m with a fifth of slack and tails are 1.74 km of WD-1A, 13.53 kg a km with 15 % of reel: 27 kg.
  const { trips, walkM } = carrying('bd', 10, 1)
  expect(trips).toBe(3)
  expect(walkM).toBeCloseTo(2 * groundM('bd') + groundM('bd'), 6)
})

test('walking takes its time at the pace of walking, to lay and to take up', () => {
  const one = measured.get(l('ab'))!
  const [still, walked] = [0, 8000].map((walkM) => hoursOfLine(one, 1, 0, [], undefined, walkM))
  expect(walked!.totalH - still!.totalH).toBeCloseTo(2, 9)
  expect(walked!.recoveryH - still!.recoveryH).toBeCloseTo(2, 9)
})
