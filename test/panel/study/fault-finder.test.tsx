// @vitest-environment page
import { act } from 'preact/test-utils'
import { expect, test, vi } from 'vitest'
import type { CIRCUIT_JOBS as Jobs } from '../../../src/jobs/circuit-answers'
import { UpkeepStudies } from '../../../src/panel/study/circuit-studies'
import { removeStation } from '../../../src/plan/station-edits'
import { createStore } from '../../../src/state/store'
import { builtInWire } from '../../reference/built-in-entry'
import { page } from '../page'
import { FORD, NET, SMALL_PLAN } from '../small-plan'

// The worker's own answers, with no worker.
vi.mock('../../../src/jobs/circuit-jobs', () => ({
  circuitJobs: () => ({
    ask: async (kind: keyof typeof Jobs, question: never) => {
      const { CIRCUIT_JOBS } = await import('../../../src/jobs/circuit-answers')
      return {
        ok: true,
        value: CIRCUIT_JOBS[kind](question, { part: () => {}, handOver: () => {} } as never),
      }
    },
    dispose: () => {},
  }),
}))

function show() {
  const store = createStore(SMALL_PLAN)
  const shown = page(<UpkeepStudies store={store} id={NET} />)
  shown.openAll()
  const found = () => shown.all('.found')[0]?.textContent ?? ''
  /** Chooses what more is known, and adds it. */
  const add = (kind: string) => {
    shown.give('Something more', kind)
    shown.press('Add what is known')
  }
  return { store, ...shown, add, found }
}
const wireM = () => createStore(SMALL_PLAN).report.value.lines[0]!.wireM
const WIRE = builtInWire('wd-1a')
/** What an ohmmeter reads into a short in the middle of the line. */
const HALF_OHMS = String((WIRE.loopOhmPerKm * wireM()) / 2000)

test('ohms with the far end open are answered with kind, place and what to do, and a mark on the map', async () => {
  const { store, give, add, found } = show()
  expect(found()).toBe('')
  add('open')
  expect(found()).toBe('')
  give('Ohms read, Ω', HALF_OHMS)
  await expect.poll(found).toContain('Most likely a short')
  expect(found()).toMatch(/on Hut – Ford between tags 1\/\d+ and 1\/\d+/)
  expect(found()).toContain('What to do next')
  await expect.poll(() => store.faultPlace.value).not.toBeNull()
  const [lonDeg, latDeg] = store.faultPlace.value!
  expect(lonDeg).toBeCloseTo(11, 6)
  // Half of the wire: within some tens of metres of the bend, as far as wire and meter can tell.
  expect(latDeg).toBeGreaterThan(47.0042)
  expect(latDeg).toBeLessThan(47.0052)
})

test('more of it is taken together, and what is taken out no longer counts', async () => {
  const { give, add, found, press } = show()
  add('rings')
  await expect.poll(found).toMatch(/^Most likely .*on Hut – Ford/)
  const byRinging = found()
  give('What happens', 'yes')
  await expect.poll(found).toMatch(/^By all of this nothing is wrong/)
  expect(found()).not.toBe(byRinging)
  press('Take out')
  expect(found()).toBe('')
})

test('what was read on the walk, a stretch found sound and a crank as ever count as well', async () => {
  const { give, add, found, press, text } = show()
  add('record')
  expect(text()).toContain('Nothing was read or tested on the walk')
  press('Take out')
  add('crank')
  await expect.poll(found).toMatch(/break/)
  give('What happens', 'as-ever')
  await expect.poll(found).toMatch(/^By all of this nothing is wrong/)
  add('open')
  give('Ohms read, Ω', HALF_OHMS)
  give('The meter errs by, %', '0.5')
  await expect
    .poll(found)
    .toMatch(/95 in 100 that it lies from \d+ m to \d+ m of wire from Hut on Hut – Ford/)
})

test('a meter at a tag looks to an end of its line', async () => {
  const { give, add, found, all } = show()
  add('open')
  const tag = all<HTMLOptionElement>('option').find(({ textContent }) => textContent?.startsWith('Tag 1/'))!
  give('The meter stands at', tag.value)
  give('It looks to', 'to')
  give('Ohms read, Ω', '12')
  await expect.poll(found).toContain('Most likely')
})

test('the mark goes when the finder is put away, and with a station that goes', async () => {
  const { store, give, add, text, all } = show()
  add('open')
  give('Ohms read, Ω', HALF_OHMS)
  await expect.poll(() => store.faultPlace.value).not.toBeNull()
  const details = all<HTMLDetailsElement>('details').find((each) => each.textContent.includes('do you know'))!
  act(() => {
    details.removeAttribute('open')
    details.dispatchEvent(new Event('toggle'))
  })
  expect(store.faultPlace.value).toBeNull()
  act(() => store.edit((plan) => removeStation(plan, FORD)))
  expect(text()).not.toContain('Most likely')
})

test('people are warned before they measure, and told what the meter should read', () => {
  const { text, store } = show()
  expect(text()).toContain('disconnect the supply')
  expect(text()).toContain('let nobody crank')
  const { loopOhms } = store.report.value.lines[0]!
  expect(text()).toContain(`${loopOhms.toFixed(loopOhms < 100 ? 1 : 0)} Ω`)
})
