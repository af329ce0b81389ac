import { expect, test } from 'vitest'
import { layingOrder } from '../../src/materials/laying-order'
import type { LineId } from '../../src/plan/id'
import { demoPlan } from '../sheet/demo-source'
import { wildNet } from '../sheet/wild-net'

test.each([demoPlan(), ...Array.from({ length: 10 }, (_, i) => wildNet(i + 1, 4 + 3 * i))])(
  'every line is laid once, and each from wire that lies already where any is left that such wire reaches',
  (plan) => {
    const lines = [...plan.lines.keys()]
    const order = layingOrder(plan, lines.toReversed())
    expect([...order].sort()).toEqual([...lines].sort())
    const reached = new Set<string>()
    for (const [i, id] of order.entries()) {
      const { from, to } = plan.lines.get(id)!
      const isReached = (line: LineId) =>
        reached.has(plan.lines.get(line)!.from) || reached.has(plan.lines.get(line)!.to)
      if (i > 0) expect(isReached(id) || !order.slice(i).some(isReached)).toBe(true)
      reached.add(from).add(to)
    }
  },
)
