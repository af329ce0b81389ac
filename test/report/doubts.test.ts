import { expect, test } from 'vitest'
import { measurePlan } from '../../src/measure/measure-line'
import type { LineId } from '../../src/plan/id'
import type { Plan } from '../../src/plan/plan'
import { moveStation } from '../../src/plan/station-edits'
import { doubtsOf } from '../../src/report/doubts'
import type { Ground } from '../../src/terrain/ground'
import { doubtText } from '../../src/words/doubt-words'
import { tongueOf } from '../../src/words/tongue'
import { drawnNet, l, s } from '../plan/drawn-net'

const doubts = (plan: Plan, ground?: Ground) => doubtsOf(plan, measurePlan(plan, ground), ground)
const codes = (plan: Plan, ground?: Ground) =>
  doubts(plan, ground).map(({ code, where }) => `${code} ${where}`)

/** Ground whose height is a function of the place; along it a leg is so many times longer. */
const groundOf = (heightM: (lonDeg: number) => number, times = 1): Ground => ({
  heightM,
  groundM: (_from, _to, mapM) => mapM * times,
})

test('a net that is meant raises no doubt', () => {
  expect(doubts(drawnNet('ab', 'bc'))).toEqual([])
  expect(
    doubts(
      drawnNet('ab', 'bc'),
      groundOf(() => 300, 1.05),
    ),
  ).toEqual([])
})

test('a lost sign is told once, with its leg and its length', () => {
  const plan = drawnNet('ab')
  const [lonDeg, latDeg] = plan.stations.get(s('b'))!.position
  const slipped = moveStation(plan, s('b'), [-lonDeg - 10, latDeg])
  expect(doubts(slipped)).toMatchObject([{ code: 'long-leg', where: l('ab'), legIndex: 0 }])
  expect(doubtText(doubts(slipped)[0]!, tongueOf(slipped, 'metric'))).toMatch(
    /^Leg 1 of A – B is [\d,. ]+ km long/,
  )
})

test('heights that no land has, that jump, or that belong elsewhere are doubted', () => {
  const plan = drawnNet('ab')
  expect(
    codes(
      plan,
      groundOf(() => 25_000),
    ),
  ).toEqual(['height-off-earth l-ab'].map((each) => each.replace('l-ab', l('ab'))))
  expect(
    codes(
      plan,
      groundOf(() => 300, 2),
    ),
  ).toEqual([`rough-ground ${l('ab')}`])
  const first = plan.stations.get(s('a'))!.position[0]
  expect(
    codes(
      plan,
      groundOf((lonDeg) => (lonDeg === first ? 0 : 8000)),
    ),
  ).toEqual([`steep-leg ${l('ab')}`])
  expect(codes(plan, { heightM: () => undefined, groundM: () => undefined })).toEqual(['ground-elsewhere '])
  expect(codes(plan, { ...groundOf(() => 200), hasEightBits: true })).toEqual(['picture-for-ground '])
})

test('two stations on one spot are doubted, and so are lines on one path unless circuits use both', () => {
  const plan = drawnNet('ab', 'bc')
  const same = moveStation(plan, s('c'), plan.stations.get(s('a'))!.position)
  expect(codes(same)).toContain(`stations-on-one-spot ${s('c')}`)
  expect(codes(same)).toContain(`line-on-line ${l('bc')}`)
  const twin = { ...plan.lines.get(l('ab'))!, id: 'twin' as LineId }
  const drawnTwice = { ...plan, lines: new Map([...plan.lines, [twin.id, twin]]) }
  expect(doubts(drawnTwice)).toMatchObject([{ code: 'line-on-line', where: 'twin', other: l('ab') }])
  const [circuit] = [...plan.circuits.values()].filter(({ lines }) => lines.includes(l('ab')))
  const second = {
    ...circuit!,
    id: 'second' as typeof circuit extends undefined ? never : NonNullable<typeof circuit>['id'],
    lines: [twin.id],
  }
  const meant = { ...drawnTwice, circuits: new Map([...plan.circuits, [second.id, second]]) }
  expect(doubts(meant)).toEqual([])
})
