import { describe, expect, test } from 'vitest'
import type { StationId } from '../../src/plan/id'
import { addStation, removeStation } from '../../src/plan/station-edits'
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
