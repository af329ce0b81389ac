import { describe, expect, test } from 'vitest'
import type { StationId } from '../../src/plan/id'
import type { Plan } from '../../src/plan/plan'
import { addStation, moveStation, removeStation } from '../../src/plan/station-edits'
import { createStore } from '../../src/state/store'

const A = 'a' as StationId
const placed = () => {
  const store = createStore()
  store.edit((plan) => addStation(plan, { id: A, name: 'Mill', position: [10, 47] }))
  store.selection.value = { kind: 'station', id: A }
  return store
}

describe('what is selected', () => {
  test('is let go when undo takes it off the plan', () => {
    const store = placed()
    store.undo()
    expect(store.selection.value).toBeNull()
  })

  test('is let go when an edit takes it off the plan, and kept when it stays', () => {
    const store = placed()
    store.edit((plan) => addStation(plan, { id: 'b' as StationId, name: 'Weir', position: [10, 48] }))
    expect(store.selection.value).toEqual({ kind: 'station', id: A })
    store.edit((plan) => removeStation(plan, A))
    expect(store.selection.value).toBeNull()
  })
})

describe('in a drag', () => {
  const to = (lonDeg: number) => (plan: Plan) => moveStation(plan, A, [lonDeg, 47])
  const slow = () => {
    const waiting: (() => void)[] = []
    const store = createStore(placed().plan.value, (work) => void waiting.push(work))
    const lonDeg = (plan: Plan) => plan.stations.get(A)!.position[0]
    const has = () => ({ hand: lonDeg(store.atHand.value), figures: lonDeg(store.plan.value) })
    return { store, has, follow: () => waiting.splice(0).forEach((work) => void work()) }
  }

  test('the plan and its report follow the hand later, to where it is by then', () => {
    const { store, has, follow } = slow()
    store.preview(to(11))
    store.preview(to(12))
    expect(has()).toEqual({ hand: 12, figures: 10 })
    follow()
    expect(has()).toEqual({ hand: 12, figures: 12 })
  })

  test('what is dropped is where the hand was, though no figure has followed yet; what is let go leaves nothing', () => {
    const { store, has, follow } = slow()
    store.preview(to(11))
    store.settle()
    expect(has()).toEqual({ hand: 11, figures: 11 })
    store.preview(to(12))
    store.cancel()
    follow()
    expect(has()).toEqual({ hand: 11, figures: 11 })
    expect(store.dragging.value).toBe(false)
  })
})
