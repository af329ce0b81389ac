// @vitest-environment page
import { expect, test } from 'vitest'
import { MeasuredForm } from '../../../src/panel/study/measured-form'
import { createStore } from '../../../src/state/store'
import type { TipGroup } from '../../../src/words/odds-words'
import { page } from '../page'
import { FORD, HUT, LINE, NET, SMALL_PLAN } from '../small-plan'

function formFor(tip: Omit<TipGroup, 'share'>) {
  const store = createStore(SMALL_PLAN)
  let taken = 0
  const form = page(
    <MeasuredForm store={store} id={NET} tip={{ ...tip, share: 0.6 }} onTaken={() => taken++} />,
  )
  return { store, form, taken: () => taken }
}

test('a bell that was measured at Ford is used there alone, and one undo takes it back', () => {
  const { store, form, taken } = formFor({ what: 'ringer.minVolts', entry: 'crank-1000', at: [FORD, HUT] })
  form.press('Use it')
  expect(form.refusals()).toEqual(['Nothing was read yet: type what the meter says.'])
  form.give('Volts that just ring the bell', '11')
  form.give('It is within ±', '2')
  form.press('Use it')
  expect(taken()).toBe(1)
  const own = store.plan.value.catalog.sets[0]!
  expect([own.ringer!.minVolts, own.spread!['ringer.minVolts']]).toEqual([11, 2])
  expect(own.sources!['ringer.minVolts']).toBe('Measured, within 2 %.')
  expect(store.plan.value.circuits.get(NET)!.sets.get(FORD)).toBe(own.id)
  expect(store.plan.value.circuits.get(NET)!.sets.get(HUT)).toBe('crank-1000')
  store.undo()
  expect(store.settled.value).toBe(SMALL_PLAN)
})

test('what the plan refuses is told, and the plan stays', () => {
  const { store, form } = formFor({ what: 'ringer.minVolts', entry: 'crank-1000', at: [FORD] })
  form.give('Volts that just ring the bell', '-3')
  form.press('Use it')
  expect(form.refusals()).toHaveLength(1)
  expect(store.plan.value).toBe(SMALL_PLAN)
})

test('ohms of a known length are those of all such wire, or of one line', () => {
  const { store, form } = formFor({ what: 'loopOhmPerKm', entry: 'wd-1a', at: [] })
  form.give('Length measured', '200')
  form.give('The meter read', '30')
  form.give('It is that of', LINE)
  form.press('Use it')
  // 30 Ω on 200 m at 20 °C.
  expect(store.plan.value.catalog.wires[0]).toMatchObject({ id: 'wd-1a-2', loopOhmPerKm: 150 })
  expect(store.plan.value.lines.get(LINE)!.wire).toBe('wd-1a-2')
})
