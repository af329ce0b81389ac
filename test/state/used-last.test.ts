import { describe, expect, test } from 'vitest'
import { createStore } from '../../src/state/store'
import { equipmentUsedLast } from '../../src/state/used-last'
import { demoPlan } from '../sheet/demo-source'

describe('what a new line is equipped with', () => {
  const store = createStore()
  const plan = demoPlan()

  test('is what was used last, but for boards: two telephones need none between them', () => {
    const last = [...plan.circuits.values()].at(-1)!
    expect(store.catalog.value.supplies.get(last.supply!.type)?.kind).toBe('board')
    const { set, supply } = equipmentUsedLast(store, plan)
    expect(store.catalog.value.sets.has(set)).toBe(true)
    expect(['board', 'exchange']).not.toContain(supply && store.catalog.value.supplies.get(supply)?.kind)
  })

  test('is a crank set without a supply where nothing else was used', () => {
    const { set, supply } = equipmentUsedLast(store, { ...plan, circuits: new Map() })
    expect([Boolean(store.catalog.value.sets.get(set)?.generator), supply]).toEqual([true, null])
  })
})
