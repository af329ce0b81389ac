import { expect, test } from 'vitest'
import { layingOrder } from '../../src/materials/laying-order'
import { demoPlan } from '../sheet/demo-source'
import { wildNet } from '../sheet/wild-net'

test.each([demoPlan(), ...Array.from({ length: 10 }, (_, i) => wildNet(i + 1, 4 + 3 * i))])(
  'every line is laid once, and each of a connected net from wire that lies already',
  (plan) => {
    const lines = [...plan.lines.keys()]
    const order = layingOrder(plan, lines.toReversed())
    expect([...order].sort()).toEqual([...lines].sort())
    const reached = new Set<string>()
    for (const [i, id] of order.entries()) {
      const { from, to } = plan.lines.get(id)!
      if (i > 0) expect(reached.has(from) || reached.has(to)).toBe(true)
      reached.add(from).add(to)
    }
  },
)
