// @vitest-environment page
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

test('a gauge and a capacitance that are known are taken as they are', () => {
  const { form, own } = formOf()
  form.give('Strands in one wire', '1')
  form.give('Its size is known by', 'awg')
  form.give('Gauge of one wire, AWG', '24')
  form.give('Capacitance, if it is known', '52')
  form.press('Add this wire')
  // 25.67 Ω per 1000 ft (NBS Handbook 100), two wires, 2 % for the twist.
  expect(own()[0]?.loopOhmPerKm).toBeCloseTo((2 * 25.67 * 1.02) / 0.3048, 0)
  expect(own()[0]?.nanoFPerKm).toBe(52)
})

test('insulation that was read wet is the leakage of the wet wire', () => {
  const { form, own } = formOf('wd-1a')
  form.give('What was read', 'kOhms')
  form.give('The wire was', 'wet')
  form.give('Length measured', '1000')
  form.give('The meter read', '20')
  form.press('Add it as measured')
  // 20 kΩ·km.
  expect(own()[0]?.wetMicroSPerKm).toBeCloseTo(50, 9)
})

test('what a meter read of a known length takes the printed figure’s place, with the spread of the meter', () => {
  const { form, own } = formOf('wd-1a')
  form.press('Add it as measured')
  expect(form.refusals()).toEqual(['Nothing was read yet: type what the meter says.'])
  form.give('The meter read', '15')
  form.press('Add it as measured')
  // 15 Ω on 100 m at the plan's 20 °C.
  expect(own()[0]).toMatchObject({ id: 'wd-1a-2', loopOhmPerKm: 150, spread: { loopOhmPerKm: 2 } })
})
