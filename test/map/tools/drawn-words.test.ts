import { expect, test } from 'vitest'
import { drawnSentence } from '../../../src/map/tools/drawn-words'
import type { LineId } from '../../../src/plan/id'
import { demoPlan } from '../../sheet/demo-source'

const plan = demoPlan()
const [first] = plan.lines.values()
const drawn = (line: Partial<typeof first>) => {
  const id = 'second' as LineId
  const { from, to, wire, bends, legs } = { ...first!, ...line }
  const added = {
    ...plan,
    lines: new Map(plan.lines).set(id, { ...first!, id, from, to, wire, bends, legs }),
  }
  return drawnSentence(added, added.lines.get(id)!, [])
}

test('a line drawn on the path of another, either way round, is told to be a second wire', () => {
  expect(drawn({})).toMatch(/: a second wire on the path of the first$/)
  expect(drawn({ from: first!.to, to: first!.from, bends: first!.bends.toReversed() })).toMatch(
    /a second wire/,
  )
})

test('a line between the same stations by another way is not', () => {
  expect(drawn({ bends: first!.bends.map(([lon, lat]) => [lon + 0.001, lat] as const) })).toMatch(/drawn$/)
})
