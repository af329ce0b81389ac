import { expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { withFigure } from '../../src/catalog/entry-value'
import { setSupply } from '../../src/plan/circuit-edits'
import { takeMeasured } from '../../src/plan/measured-edits'
import type { Plan } from '../../src/plan/plan'
import { setStock } from '../../src/plan/settings-edits'
import { FORD, HUT, LINE, NET, SMALL_PLAN } from '../panel/small-plan'
import { mended } from './drawn-net'

const set = BUILT_IN.sets.find(({ id }) => id === 'crank-1000')!
const wire = BUILT_IN.wires.find(({ id }) => id === 'wd-1a')!
const bell = (minVolts: number, of: typeof set = set) =>
  withFigure(of, { at: 'ringer.minVolts', value: minVolts, meterPct: 3 })
const atFord = { circuit: NET, station: FORD } as const
const measureFord = (plan: Plan, entry: typeof set) =>
  mended(takeMeasured(plan, { kind: 'set', entry, of: atFord }))

test('a bell measured at one station is that station’s own, with the spread of the meter', () => {
  const plan = measureFord(SMALL_PLAN, bell(11))
  const sets = plan.circuits.get(NET)!.sets
  expect([sets.get(HUT), sets.get(FORD)]).toEqual(['crank-1000', 'crank-1000-2'])
  expect(plan.catalog.sets).toEqual([
    expect.objectContaining({
      id: 'crank-1000-2',
      name: `${set.name}, measured`,
      ringer: { ...set.ringer, minVolts: 11 },
      spread: { ...set.spread, 'ringer.minVolts': 3 },
    }),
  ])
})

test('measured once more, it stays the same entry; with another station on it, it becomes another', () => {
  const once = measureFord(SMALL_PLAN, bell(11))
  const own = once.catalog.sets[0]!
  const twice = measureFord(once, bell(12, own))
  expect(twice.catalog.sets.map(({ id, ringer }) => [id, ringer!.minVolts])).toEqual([['crank-1000-2', 12]])
  const shared: Plan = {
    ...once,
    circuits: new Map([
      [
        NET,
        {
          ...once.circuits.get(NET)!,
          sets: new Map([
            [HUT, own.id],
            [FORD, own.id],
          ]),
        },
      ],
    ]),
  }
  const apart = measureFord(shared, bell(12, own))
  expect(apart.catalog.sets.map(({ id }) => id)).toEqual(['crank-1000-2', 'crank-1000-2-2'])
  expect(apart.circuits.get(NET)!.sets.get(FORD)).toBe('crank-1000-2-2')
})

test('for all such sets, it hides the built-in one', () => {
  const plan = mended(takeMeasured(SMALL_PLAN, { kind: 'set', entry: bell(11), of: 'all' }))
  expect(plan.catalog.sets.map(({ id }) => id)).toEqual(['crank-1000'])
  expect(plan.circuits).toBe(SMALL_PLAN.circuits)
})

test('wire measured on one line is that line’s own; an entry that the stock is of stays the stock’s', () => {
  const entry = withFigure(wire, { at: 'loopOhmPerKm', value: 150, meterPct: 2 })
  const plan = mended(takeMeasured(SMALL_PLAN, { kind: 'wire', entry, of: LINE }))
  expect(plan.lines.get(LINE)!.wire).toBe('wd-1a-2')
  const stocked = mended(setStock(plan, [{ wire: 'wd-1a-2', lengthM: 400, count: 3 }]))
  const again = mended(takeMeasured(stocked, { kind: 'wire', entry: plan.catalog.wires[0]!, of: LINE }))
  expect(again.lines.get(LINE)!.wire).toBe('wd-1a-2-2')
})

test('a supply that was measured stands where it stood', () => {
  const fed = setSupply(SMALL_PLAN, NET, { type: 'feed-48', at: HUT })
  const supply = BUILT_IN.supplies.find(({ id }) => id === 'feed-48')!
  const entry = withFigure(supply, { at: 'ring.volts', value: 71, meterPct: 2 })
  const plan = mended(takeMeasured(fed, { kind: 'supply', entry, of: NET }))
  expect(plan.circuits.get(NET)!.supply).toEqual({ type: 'feed-48-2', at: HUT })
  expect(plan.catalog.supplies[0]!.ring!.volts).toBe(71)
})
