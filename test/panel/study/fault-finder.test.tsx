// @vitest-environment happy-dom
import { act } from 'preact/test-utils'
import { expect, test } from 'vitest'
import { UpkeepStudies } from '../../../src/panel/study/circuit-studies'
import { removeStation } from '../../../src/plan/station-edits'
import { createStore } from '../../../src/state/store'
import { builtInWire } from '../../reference/built-in-entry'
import { page } from '../page'
import { FORD, NET, SMALL_PLAN } from '../small-plan'

function show() {
  const store = createStore(SMALL_PLAN)
  const shown = page(<UpkeepStudies store={store} id={NET} />)
  shown.openAll()
  return { store, ...shown, found: () => shown.all('[role="status"]')[0]!.textContent }
}
const wireM = () => createStore(SMALL_PLAN).report.value.lines[0]!.wireM
const WIRE = builtInWire('wd-1a')

test('a reading is answered with a place in words and a mark on the map', () => {
  const { store, give, found } = show()
  expect(found()).toBe('')
  // Half of the wire: the overhead leg has less slack than the one on the surface, so it is short of the bend.
  give('Loop read', String((WIRE.loopOhmPerKm * wireM()) / 2000))
  expect(found()).toMatch(/^About \d+ m of wire from Hut, on Hut – Ford: \d+ m past Hut\./)
  expect(found()).toContain('10 °C warmer or colder')
  const [lonDeg, latDeg] = store.faultPlace.value!
  expect(lonDeg).toBeCloseTo(11, 6)
  expect(latDeg).toBeGreaterThan(47.004)
  expect(latDeg).toBeLessThan(47.005)
})

test('the same reading from the other end is counted from there', () => {
  const { give, found } = show()
  give('The meter stands at', FORD)
  give('It reads towards', 'hut')
  give('Loop read', String((WIRE.loopOhmPerKm * wireM()) / 2000))
  expect(found()).toMatch(/of wire from Ford, on Hut – Ford: \d+ m past bend 1\./)
})

test('every way of measuring asks for its own figures, and answers when it has those that it needs', () => {
  const { give, found, store } = show()
  give('What is measured', 'open-both-ends')
  give('Capacitance read here', '20')
  expect(found()).toBe('')
  give('Capacitance read at the far end', '20')
  expect(found()).toMatch(/^About \d+ m of wire from Hut.*temperature of the wire does not matter/)
  give('What is measured', 'varley')
  give('Rheostat', '60')
  expect(found()).toMatch(/warmer or colder/)
  give('Loop read, far end joined', '150')
  expect(found()).toMatch(/temperature of the wire does not matter/)
  give('Loop read, far end joined', '')
  expect(found()).toMatch(/warmer or colder/)
  expect(store.faultPlace.value).not.toBeNull()
})

test('what cannot be is said, and nothing is marked', () => {
  const { store, give, found } = show()
  give('Loop read', '9000')
  expect(found()).toMatch(/more than the whole way to Ford has, \d/)
  expect(store.faultPlace.value).toBeNull()
  give('It reads towards', 'hut')
  expect(found()).toContain('Choose another station')
})

test('the mark goes when the finder is put away', () => {
  const { store, give, all } = show()
  give('Loop read', '40')
  expect(store.faultPlace.value).not.toBeNull()
  const details = all<HTMLDetailsElement>('details').find((each) => each.textContent.includes('Loop read'))!
  act(() => {
    details.removeAttribute('open')
    details.dispatchEvent(new Event('toggle'))
  })
  expect(store.faultPlace.value).toBeNull()
})

test('a station that goes takes the finder with it without a fault', () => {
  const { store, give, text } = show()
  give('Loop read', '40')
  act(() => store.edit((plan) => removeStation(plan, FORD)))
  expect(store.faultPlace.value).toBeNull()
  expect(text()).not.toContain('About')
})

test('people are warned before they measure, and told what the meter should read', () => {
  const { text, store } = show()
  expect(text()).toContain('disconnect the supply')
  expect(text()).toContain('let nobody crank')
  const { loopOhms } = store.report.value.lines[0]!
  expect(text()).toContain(`${loopOhms.toFixed(loopOhms < 100 ? 1 : 0)} Ω`)
})
