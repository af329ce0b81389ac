import { expect, test } from 'vitest'
import { measurePlan } from '../../src/measure/measure-line'
import type { LineId } from '../../src/plan/id'
import type { Plan } from '../../src/plan/plan'
import { moveStation } from '../../src/plan/station-edits'
import { doubtsOf } from '../../src/report/doubts'
import type { Ground } from '../../src/terrain/ground'
import { doubtText } from '../../src/words/doubt-words'
import { tongueOf } from '../../src/words/tongue'
import { drawLine, drawnNet, l, s } from '../plan/drawn-net'

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

test('a gap in the ground is told with its line, its legs, its length and a place on the grid', () => {
  const plan = drawLine(drawnNet('ab', 'bc', 'cd'), 'de', [
    [10.033, 50],
    [10.036, 50],
  ])
  // Known but for 10.0344° to 10.0375° E, as between two files: the first leg of the last line, of three, is known, and all others.
  const isKnown = (lonDeg: number) => lonDeg < 10.0344 || lonDeg > 10.0375
  const ground: Ground = {
    heightM: (lonDeg) => (isKnown(lonDeg) ? 300 : undefined),
    groundM: ([from], [to], mapM) => {
      for (let i = 0; i <= 100; i++) if (!isKnown(from + ((to - from) * i) / 100)) return undefined
      return mapM
    },
  }
  const [gap, ...more] = doubts(plan, ground)
  expect(more).toEqual([])
  expect(gap).toMatchObject({ code: 'ground-gap', where: l('de'), legIndex: 1, legs: 2 })
  // 0.003° and 0.004° of longitude at 50° N, 71.70 km a degree on WGS 84 (its ellipsoid's parallel).
  expect((gap as typeof gap & { mapM: number }).mapM).toBeCloseTo(0.007 * 71_696, -1)
  expect(gap!.position![0]).toBeGreaterThan(10.0344)
  expect(gap!.position![0]).toBeLessThan(10.0355)
  // 10.035° E, 50° N: zone 32, as any converter of grid references has it.
  expect(doubtText(gap!, tongueOf(plan, 'metric'))).toMatch(
    /^No height is known under legs 2 to 3 of D – E, or under a part of them, about 32U NA 7\d{4} 3\d{4}: 50\d m have the map’s length\. Is an elevation file missing there, or has it a hole\?$/,
  )
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
