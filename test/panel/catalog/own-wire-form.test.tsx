// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { WireFromCutEnd, WireFromMeter } from '../../../src/panel/catalog/own-wire-form'
import { putWire } from '../../../src/plan/catalog-edits'
import { createStore } from '../../../src/state/store'
import { builtInWire } from '../../reference/built-in-entry'
import { page } from '../page'

function formOf(wire?: string) {
  const store = createStore()
  const props = {
    store,
    freeId: (id: string) => `${id}-2`,
    onPut: (own: Parameters<typeof putWire>[1]) => store.tryEdit((plan) => putWire(plan, own)),
  }
  const form = page(
    wire ? <WireFromMeter {...props} wire={builtInWire(wire)} /> : <WireFromCutEnd {...props} />,
  )
  form.openAll()
  return { form, own: () => store.plan.value.catalog.wires }
}

test('a cut end makes a wire of the plan’s own: 0.5 mm of copper is 175.6 Ω a km of loop', () => {
  const { form, own } = formOf()
  form.give('Strands in one wire', '1')
  form.give('Diameter of a strand', '0.5')
  form.press('Add this wire')
  // 2 · 0.017241 Ω mm²/m · 1000 m / (π/4 · 0.5² mm²), by IEC 60028; the twist takes up 2 % more.
  expect(own()[0]?.loopOhmPerKm).toBeCloseTo(175.6 * 1.02, 0)
})

test('what a meter read of a known length takes the printed figure’s place, with the spread of the meter', () => {
  const { form, own } = formOf('wd-1a')
  form.press('Add it as measured')
  expect(form.refusals()).toEqual(['Nothing was read: give ohms, capacitance or both.'])
  form.give('The meter read', '15')
  form.press('Add it as measured')
  // 15 Ω on 100 m at the plan's 20 °C.
  expect(own()[0]).toMatchObject({ id: 'wd-1a-2', loopOhmPerKm: 150, spread: { loopOhmPerKm: 2 } })
})
