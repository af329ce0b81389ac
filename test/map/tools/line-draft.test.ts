import { expect, test } from 'vitest'
import { beginLine, drawLine, withBend, withoutLastBend } from '../../../src/map/tools/line-draft'
import type { StationId } from '../../../src/plan/id'
import { EMPTY_PLAN } from '../../../src/plan/plan'
import { addStation } from '../../../src/plan/station-edits'

const A = 'a' as StationId
const plan = addStation(EMPTY_PLAN, { id: A, name: 'Station 1', position: [10, 47] })

test('each leg is laid as the hand was set when its bend was clicked', () => {
  let draft = beginLine(plan, A)
  draft = withBend(draft, [10.01, 47], 'overhead')
  draft = withBend(draft, [10.02, 47], 'buried')
  draft = withBend(draft, [10.03, 47], 'water')
  draft = withoutLastBend(draft)
  const drawn = drawLine(plan, draft, [10.04, 47], { wire: 'w', lay: 'surface' })
  const line = drawn.lines.get(draft.lineId)!
  expect(line.legs.map(({ lay }) => lay)).toEqual(['overhead', 'buried', 'surface'])
  expect(line.bends).toEqual([
    [10.01, 47],
    [10.02, 47],
  ])
})

test('a line that ends on open ground brings its station, with the next free name', () => {
  const draft = beginLine(plan, A)
  const drawn = drawLine(plan, draft, [10.04, 47], { wire: 'w', lay: 'surface' })
  expect([...drawn.stations.values()].map(({ name }) => name)).toEqual(['Station 1', 'Station 2'])
  expect(drawn.lines.get(draft.lineId)?.to).toBe(draft.endId)
})

test('a line back to where it starts is none', () => {
  const draft = beginLine(plan, A)
  expect(drawLine(plan, draft, A, { wire: 'w', lay: 'surface' }).lines.size).toBe(0)
})
