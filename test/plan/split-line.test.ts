import { describe, expect, test } from 'vitest'
import { setLays } from '../../src/plan/leg-edits'
import { setReturn } from '../../src/plan/line-edits'
import { splitLine } from '../../src/plan/split-line'
import { circuitsIn, drawLine, drawnNet, l, mended, s } from './drawn-net'

/** Line ab of three legs, and bc beyond it. */
const net = drawLine(
  setLays(
    drawLine(drawnNet(), 'ab', [
      [10.002, 50.001],
      [10.006, 50.001],
    ]),
    l('ab'),
    [1],
    'overhead',
  ),
  'bc',
)
const joint = (lonDeg: number, latDeg: number) => ({
  id: s('j'),
  name: 'Joint',
  position: [lonDeg, latDeg] as const,
})
const split = (leg: number, lonDeg: number, latDeg: number, plan = net) =>
  splitLine(plan, { line: l('ab'), leg, station: joint(lonDeg, latDeg), second: l('jb') })

describe('a line that a station comes to stand on', () => {
  test('becomes two that are joined there, in its circuit, each laid as it was', () => {
    const plan = split(1, 10.004, 50.001)
    expect(plan.lines.get(l('ab'))).toMatchObject({ from: 'a', to: 'j', bends: [[10.002, 50.001]] })
    expect(plan.lines.get(l('jb'))).toMatchObject({ from: 'j', to: 'b', bends: [[10.006, 50.001]] })
    expect(plan.lines.get(l('ab'))!.legs.map(({ lay }) => lay)).toEqual(['surface', 'overhead'])
    expect(plan.lines.get(l('jb'))!.legs.map(({ lay }) => lay)).toEqual(['overhead', 'surface'])
    expect(circuitsIn(plan)).toEqual(['c-ab: ab jb bc'])
  })

  test('is cut on a bend with no stub of a leg left', () => {
    for (const leg of [0, 1]) {
      const plan = split(leg, 10.002, 50.001)
      expect(plan.lines.get(l('ab'))!.bends).toEqual([])
      expect(plan.lines.get(l('jb'))!.bends).toEqual([[10.006, 50.001]])
      expect(plan.lines.get(l('ab'))!.legs.map(({ lay }) => lay)).toEqual(['surface'])
      expect(plan.lines.get(l('jb'))!.legs.map(({ lay }) => lay)).toEqual(['overhead', 'surface'])
    }
  })

  test('keeps the electrodes of an earth return at its two far ends', () => {
    const earth = mended(setReturn(net, l('ab'), 'earth', [60, 80]))
    const plan = split(1, 10.004, 50.001, earth)
    expect(plan.lines.get(l('ab'))!.electrodeOhms).toEqual([60, 0])
    expect(plan.lines.get(l('jb'))!.electrodeOhms).toEqual([0, 80])
  })

  test('stays whole where the plan has no such line or leg', () => {
    expect(split(7, 10, 50)).toBe(net)
  })
})
