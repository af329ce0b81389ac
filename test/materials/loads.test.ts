import { describe, expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mergeCatalogs } from '../../src/catalog/catalog'
import { DEFAULT_LOADS, LOAD_SOURCES } from '../../src/materials/load-allowances'
import { loadsOf } from '../../src/materials/loads'
import type { WireSpools } from '../../src/materials/spool-plan'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { KG_PER_POUND, METRES_PER_MILE } from '../../src/units'

const catalog = mergeCatalogs(BUILT_IN, EMPTY_PLAN.catalog)
const spools = (carry: WireSpools['carry']): WireSpools => ({
  wire: 'wd-1a',
  neededM: 0,
  carry,
  used: [],
  splices: 0,
  leftM: 0,
  kg: 0,
  missingM: 0,
  notLaid: [],
  bound: { splices: 0, spools: 0, leftM: 0 },
})

const plan: Plan = {
  ...EMPTY_PLAN,
  lines: new Map([
    [
      'l' as LineId,
      {
        id: 'l' as LineId,
        from: 'a' as StationId,
        to: 'b' as StationId,
        bends: [],
        legs: [{ lay: 'surface' }],
        wire: 'wd-1a',
        pairs: 1,
        return: 'pair',
      },
    ],
  ]),
  circuits: new Map([
    [
      'c' as CircuitId,
      {
        id: 'c' as CircuitId,
        name: 'net',
        lines: ['l' as LineId],
        sets: new Map((['a', 'b'] as StationId[]).map((id) => [id, 'crank-1000'])),
        supply: null,
      },
    ],
  ]),
}

test('a mile of WD-1 is 48 lb of wire, as US Army subcourse SS0440, table 1-1 has it', () => {
  const { kgByKind } = loadsOf(plan, catalog, [spools([{ lengthM: METRES_PER_MILE, count: 1 }])])
  expect(kgByKind.wire).toBeCloseTo(48 * KG_PER_POUND, 1)
})

describe('cells are carried by their own mass', () => {
  const cellsOf = (set: string, supply: string | null) => {
    const [circuit] = [...plan.circuits.values()]
    const net = {
      ...circuit!,
      sets: new Map((['a', 'b'] as StationId[]).map((id) => [id, set])),
      supply: supply ? { type: supply, at: 'a' as StationId } : null,
    }
    const { items } = loadsOf({ ...plan, circuits: new Map([[net.id, net]]) }, catalog, [])
    return items.filter(({ thing }) => thing.kind === 'cell' || thing.kind === 'supply')
  }
  test('two crank sets take two D cells of 139 g each, and as many spares', () => {
    // 139 g: product specification LR20, 2009, 3.4.
    expect(cellsOf('crank-1600', null)).toMatchObject([
      { thing: { kind: 'cell', cell: 'lr20' }, count: 8, eachKg: 0.139 },
    ])
  })
  test('two 9 V cells in one leg take two spare ones, not another box', () => {
    // 45 g: the maker's catalogue of alkaline cells.
    expect(cellsOf('common-1-ren', 'two-9-volt')).toMatchObject([
      { thing: { kind: 'supply' }, count: 1, eachKg: 0.09 },
      { thing: { kind: 'cell', cell: '6lr61' }, count: 2, eachKg: 0.045 },
    ])
  })
  test('a set that names no cell takes the allowance', () => {
    expect(cellsOf('crank-wall-five-bar', null)).toMatchObject([
      { thing: { kind: 'cell' }, count: 8, eachKg: 0.14 },
    ])
  })
  test('a feed from the mains has no spare battery', () => {
    expect(cellsOf('common-1-ren', 'feed-48')).toMatchObject([{ thing: { kind: 'supply' }, count: 1 }])
  })
})

test('the kinds and the things add up to the same total', () => {
  const loads = loadsOf(plan, catalog, [spools([{ lengthM: 402.336, count: 5 }])])
  const kinds = Object.values(loads.kgByKind).reduce((sum, kg) => sum + kg, 0)
  expect(kinds).toBeCloseTo(loads.totalKg, 9)
})

describe('carried by people', () => {
  test('a reel that is too heavy for one is shared by two', () => {
    const loads = loadsOf(plan, catalog, [spools([{ lengthM: METRES_PER_MILE, count: 1 }])])
    expect(loads.shared).toHaveLength(1)
    expect(loads.shared[0]!.people).toBe(2)
  })
  test('all of it never makes fewer loads than its mass asks for, and a lower limit more of them', () => {
    const carried = [spools([{ lengthM: 402.336, count: 9 }])]
    const usual = loadsOf(plan, catalog, carried)
    expect(usual.personLoads).toBeGreaterThanOrEqual(usual.totalKg / DEFAULT_LOADS.perPersonKg)
    const light = loadsOf(plan, catalog, carried, { ...DEFAULT_LOADS, perPersonKg: 10 })
    expect(light.personLoads).toBeGreaterThan(usual.personLoads)
    expect(light.trips).toBe(Math.ceil(light.personLoads / DEFAULT_LOADS.people))
  })
})

test('every allowance says where it comes from', () => {
  // What lines take besides has its sources beside its masses.
  const { crews: _, gearKg: _gear, ...allowances } = DEFAULT_LOADS
  expect(Object.keys(LOAD_SOURCES).sort()).toEqual(Object.keys(allowances).sort())
})

test('a load beyond what the people carry at once is a second trip', () => {
  const many = [spools([{ lengthM: 402.336, count: 9 }])]
  const { personLoads } = loadsOf(plan, catalog, many)
  const people = personLoads - 1
  expect(loadsOf(plan, catalog, many, { ...DEFAULT_LOADS, people }).trips).toBe(2)
  expect(loadsOf(plan, catalog, many, { ...DEFAULT_LOADS, people: personLoads }).trips).toBe(1)
})
