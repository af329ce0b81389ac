import { expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mergeCatalogs } from '../../src/catalog/catalog'
import { planSpools } from '../../src/materials/plan-spools'
import { measurePlan } from '../../src/measure/measure-line'
import { moveBend } from '../../src/plan/leg-edits'
import { bigPlan, SIZES } from '../bench/big-plan'

const plan = bigPlan(SIZES[200])
const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
const [line] = plan.lines.values()
const moved = moveBend(plan, line!.id, 0, [14.1, 46.1])

test('while a hand drags, a large group keeps its spools and says so, and the line that moves has no pieces', () => {
  const before = planSpools(plan, catalog, measurePlan(plan))
  const inDrag = planSpools(moved, catalog, measurePlan(moved), plan)
  expect(inDrag.spools.map(({ isFromBefore }) => isFromBefore)).toEqual([true])
  expect(inDrag.spools[0]!.neededM).toBe(before.spools[0]!.neededM)
  for (const { id } of plan.lines.values())
    expect(inDrag.pieces.get(id)).toEqual(id === line!.id ? [] : before.pieces.get(id))
})

test('when the hand is still, they are shared out anew, and nothing is said', () => {
  const { spools, pieces } = planSpools(moved, catalog, measurePlan(moved))
  expect(spools[0]!.isFromBefore).toBeUndefined()
  const laidM = pieces.get(line!.id)!.reduce((sum, { wireM }) => sum + wireM, 0)
  expect(laidM).toBeCloseTo(measurePlan(moved).get(line!.id)!.wireM, 6)
})
