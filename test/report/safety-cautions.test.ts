import { expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { type CatalogEntries, mergeCatalogs } from '../../src/catalog/catalog'
import type { Supply } from '../../src/catalog/supply'
import type { TelephoneSet } from '../../src/catalog/telephone-set'
import { setSet, setSupply } from '../../src/plan/circuit-edits'
import { safetyCautions } from '../../src/report/safety-cautions'
import { c, drawnNet, s } from '../plan/drawn-net'
import { builtInSet, builtInSupply } from '../reference/built-in-entry'

const { ring: _, ...quiet } = builtInSupply('feed-24')

const codes = (set: Partial<TelephoneSet>, supply: Partial<Supply>) => {
  const own: CatalogEntries = {
    wires: [],
    sets: [{ ...builtInSet('common-no-bell'), ...set, id: 'own-set' }],
    supplies: [{ ...quiet, ...supply, id: 'own-supply' }],
  }
  const net = setSet({ ...drawnNet('ab'), catalog: own }, c('c-ab'), s('a'), 'own-set')
  const plan = setSupply(net, c('c-ab'), { type: 'own-supply', at: s('a') })
  return safetyCautions(plan, mergeCatalogs(BUILT_IN, own)).flatMap(({ code, where }) =>
    where === 'c-ab' ? [code] : [],
  )
}

// IEC 60950-1, SELV: up to 60 V of direct current and 42.4 V peak, which is 30 V rms, may be touched.
test('above 60 V of direct current there is a shock to reckon with, at 60 V none', () => {
  expect(codes({}, { volts: 60 })).toEqual([])
  expect(codes({}, { volts: 61 })).toEqual(['dc-shock'])
})

test('above 30 V rms of ringing there is one, whoever rings', () => {
  expect(codes({ generator: { volts: 30, hz: 20, ohms: 500 } }, { volts: 24 })).toEqual([])
  expect(codes({ generator: { volts: 31, hz: 20, ohms: 500 } }, { volts: 24 })).toEqual(['ringing-shock'])
  expect(codes({}, { volts: 24, ring: { volts: 75, hz: 20, ohms: 500 } })).toEqual(['ringing-shock'])
})
