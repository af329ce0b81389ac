// @vitest-environment page
import { expect, test } from 'vitest'
import { rodsOhms } from '../../../src/budget/earth-electrode'
import { EARTH_RODS, SOILS } from '../../../src/catalog/soils'
import { EarthCalculator } from '../../../src/panel/study/earth-calculator'
import { setReturn } from '../../../src/plan/line-edits'
import { createStore } from '../../../src/state/store'
import { formatOhms } from '../../../src/words/units'
import { page } from '../page'
import { LINE, SMALL_PLAN } from '../small-plan'

function show() {
  const earth = setReturn(SMALL_PLAN, LINE, 'earth', [50, 60])
  if (!earth.ok) throw new Error(earth.problems[0]?.message)
  const store = createStore(earth.value)
  const shown = page(<EarthCalculator store={store} line={store.plan.value.lines.get(LINE)!} />)
  shown.openAll()
  const electrodes = () => store.plan.value.lines.get(LINE)!.electrodeOhms!
  return { store, electrodes, ...shown }
}
const soil = (id: string) => SOILS.find((each) => each.id === id)!

test('a rod of so many metres in a soil shows its ohms and their range', () => {
  const { give, text } = show()
  give('Soil', 'gravel')
  give('Driven length', '3.048')
  give('Diameter', '15.875')
  // The 10 ft × 5/8 in rod for which IEEE Std 142 tables soils is one of the rods on offer.
  const rod = { lengthM: 3.048, diameterM: 0.015875 }
  const ohmsIn = (ohmM: number) => formatOhms(rodsOhms(rod, ohmM, 1))
  const { ohmM, leastOhmM, mostOhmM } = soil('gravel')
  expect(text()).toContain(`About ${ohmsIn(ohmM)}, from ${ohmsIn(leastOhmM)} to ${ohmsIn(mostOhmM)}`)
})

test('one click gives the ohms to one end, and undo takes them back', () => {
  const { store, press, electrodes, give } = show()
  give('Soil', 'clay-sand')
  give('Rod', EARTH_RODS[2]!.id)
  press('Use at Ford')
  const { lengthM, diameterMm } = EARTH_RODS[2]!
  const ohms = rodsOhms({ lengthM, diameterM: diameterMm / 1000 }, soil('clay-sand').ohmM, 1)
  expect(electrodes()[0]).toBe(50)
  expect(electrodes()[1]).toBeCloseTo(ohms, -1)
  store.undo()
  expect(electrodes()).toEqual([50, 60])
})

test('more rods resist less', () => {
  const { give, text } = show()
  const shown = () => Number(text().match(/About ([\d.]+) Ω/)![1])
  const one = shown()
  give('Rods, a length apart', '4')
  expect(shown()).toBeLessThan(one / 2)
  give('Rods, a length apart', '30')
  expect(text()).toContain('Rods, a length apart must lie between 1 and 24')
})

test('earth return is said not to be recommended, and every soil has its source', () => {
  const { text } = show()
  expect(text()).toContain('Earth return is not recommended')
  for (const { name, source } of SOILS) {
    expect(text()).toContain(name)
    expect(text()).toContain(source)
  }
})
