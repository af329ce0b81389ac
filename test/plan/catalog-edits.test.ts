import { expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mergeCatalogs } from '../../src/catalog/catalog'
import { ENTRY_SCHEMAS } from '../../src/catalog/entry-schemas'
import {
  putSet,
  putSupply,
  putWire,
  removeOwnSet,
  removeOwnSupply,
  removeOwnWire,
} from '../../src/plan/catalog-edits'
import { setSet, setSupply } from '../../src/plan/circuit-edits'
import { removeLine, setWire } from '../../src/plan/line-edits'
import { putStock } from '../../src/plan/settings-edits'
import { faultsOf } from '../../src/schema/faults'
import { c, drawnNet, l, mended, refusals, s } from './drawn-net'

const wire = { ...BUILT_IN.wires[0]!, id: 'own', name: 'Own wire' }

test('every built-in entry is one that a plan could bring', () => {
  expect(BUILT_IN.wires.flatMap((entry) => faultsOf(ENTRY_SCHEMAS.wires, entry, entry.id))).toEqual([])
  expect(BUILT_IN.sets.flatMap((entry) => faultsOf(ENTRY_SCHEMAS.sets, entry, entry.id))).toEqual([])
  expect(BUILT_IN.supplies.flatMap((entry) => faultsOf(ENTRY_SCHEMAS.supplies, entry, entry.id))).toEqual([])
})

test('an entry of the plan hides the built-in one of its id, and gives it back when it goes', () => {
  const thicker = { ...BUILT_IN.wires[0]!, loopOhmPerKm: 9 }
  const plan = mended(putWire(drawnNet('ab'), thicker))
  expect(mergeCatalogs(BUILT_IN, plan.catalog).wires.get(thicker.id)?.loopOhmPerKm).toBe(9)
  expect(mended(putWire(plan, { ...thicker }))).toBe(plan)
  expect(mended(removeOwnWire(plan, thicker.id))).toEqual(drawnNet('ab'))
})

test('an entry with nonsense in it is refused, every fault with a sentence', () => {
  const wrong = { ...wire, loopOhmPerKm: -1, kgPerKm: Number.NaN, spoolsM: [0] }
  expect(refusals(putWire(drawnNet(), wrong))).toEqual([
    'The loop resistance at 20 °C is -1: give 0, or a number from 0.01 to 100,000 Ω/km.',
    'The mass is NaN: give 0, or a number from 0.01 to 10,000 kg/km.',
    'The length of a spool is 0: give a number from 1 to 100,000 m.',
  ])
})

test('a wire in use stays until something else lies there', () => {
  const plan = setWire(mended(putWire(drawnNet('ab'), wire)), l('ab'), 'own')
  expect(refusals(removeOwnWire(plan, 'own'))).toEqual([
    'Own wire is in use (A – B): put something else there first.',
  ])
  expect(mended(removeOwnWire(removeLine(plan, l('ab')), 'own')).catalog.wires).toEqual([])
  const stocked = mended(putStock(removeLine(plan, l('ab')), { wire: 'own', lengthM: 300, count: 1 }))
  expect(refusals(removeOwnWire(stocked, 'own'))).toHaveLength(1)
})

test('sets and supplies in use stay too', () => {
  const withSet = mended(putSet(drawnNet('ab'), { ...BUILT_IN.sets[0]!, id: 'own-set' }))
  const plan = mended(putSupply(withSet, { ...BUILT_IN.supplies[0]!, id: 'own-supply' }))
  const used = setSupply(setSet(plan, c('c-ab'), s('a'), 'own-set'), c('c-ab'), {
    type: 'own-supply',
    at: s('a'),
  })
  expect(refusals(removeOwnSet(used, 'own-set'))).toHaveLength(1)
  expect(refusals(removeOwnSupply(used, 'own-supply'))).toHaveLength(1)
  expect(mended(removeOwnSet(plan, 'own-set')).catalog.sets).toEqual([])
  expect(mended(removeOwnSupply(plan, 'own-supply')).catalog.supplies).toEqual([])
  expect(mended(removeOwnSet(plan, 'nothing'))).toBe(plan)
})

test('takes what real sets and supplies have besides, and refuses it where it cannot be', () => {
  const [set, supply] = [BUILT_IN.sets[0]!, BUILT_IN.supplies[0]!]
  const real = {
    ...set,
    offHook: { ...set.offHook, dropVolts: 5.6, speakAcOhms: 300 },
    battery: { volts: 3, ampHours: 10, talkMA: 30, idleMA: 0, cell: 'lr20', cells: 2 },
    kg: 3,
    spread: { 'ringer.minVolts': 25 },
    sources: { kg: { kind: 'data-sheet', says: 'A page.' }, 'ringer.ohms': 'A sentence.' },
  }
  expect(faultsOf(ENTRY_SCHEMAS.sets, real, '')).toEqual([])
  const places = (shape: Parameters<typeof faultsOf>[0], entry: object) =>
    faultsOf(shape, entry, '').map(({ at }) => at)
  expect(places(ENTRY_SCHEMAS.sets, { ...real, offHook: { ...real.offHook, dropVolts: -1 } })).toEqual([
    'offHook.dropVolts',
  ])
  expect(places(ENTRY_SCHEMAS.sets, { ...real, spread: { kg: 'ten' } })).toEqual(['spread.kg'])
  expect(places(ENTRY_SCHEMAS.sets, { ...real, sources: { kg: { kind: 'hearsay', says: 'So.' } } })).toEqual([
    'sources.kg.kind',
  ])
  expect(places(ENTRY_SCHEMAS.supplies, { ...supply, powerW: { idle: 1, talk: 2 } })).toEqual(['powerW.ring'])
  expect(
    places(ENTRY_SCHEMAS.supplies, { ...supply, fedBy: { volts: 24, ampHours: 7, efficiencyPct: 120 } }),
  ).toEqual(['fedBy.efficiencyPct'])
})
