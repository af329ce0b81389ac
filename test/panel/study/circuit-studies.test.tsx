// @vitest-environment page
import { act } from 'preact/test-utils'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { BUILT_IN } from '../../../src/catalog/built-in'
import { ReachStudies, UpkeepStudies } from '../../../src/panel/study/circuit-studies'
import { setSet, setSupply } from '../../../src/plan/circuit-edits'
import { EMPTY_PLAN, type Plan } from '../../../src/plan/plan'
import { moveStation } from '../../../src/plan/station-edits'
import { workOf } from '../../../src/plan/work'
import { createStore } from '../../../src/state/store'
import { enduranceSentences } from '../../../src/words/outlook-words'
import { tongueOf } from '../../../src/words/tongue'
import { circuitWorkerHere } from '../../jobs/worker-here'
import { page } from '../page'
import { FORD, HUT, NET, SMALL_PLAN } from '../small-plan'

function show(plan: Plan = SMALL_PLAN) {
  const store = createStore(plan)
  const shown = page(
    <>
      <ReachStudies store={store} id={NET} />
      <UpkeepStudies store={store} id={NET} />
    </>,
  )
  shown.openAll()
  return { store, ...shown }
}

/** The small plan fed from dry cells at the hut, with sets that need them. */
const fed = [HUT, FORD].reduce(
  (plan, station) => setSet(plan, NET, station, 'common-1-ren'),
  setSupply(SMALL_PLAN, NET, { type: 'two-9-volt', at: HUT }),
)

beforeEach(() => {
  vi.useFakeTimers()
  circuitWorkerHere()
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})
const stillness = () => act(() => vi.advanceTimersByTimeAsync(300).then(() => undefined))

describe('what each choice would give', () => {
  test('is a row for each wire, the circuit’s own marked, with what fails first', async () => {
    const { all, text } = show()
    expect(text()).toContain('Working it out')
    await stillness()
    const rows = all('.choices').find((table) => table.textContent?.includes('One wire on every line'))!
    expect(rows.querySelectorAll('tbody tr')).toHaveLength(BUILT_IN.wires.length)
    const own = [...rows.querySelectorAll('tr.now')]
    expect(own).toHaveLength(1)
    expect(own[0]!.textContent).toMatch(/\(yours now\).*(bell|speech).*\d km.*\d km$/)
    expect(text()).toContain('Wire from Hut to Ford, the longest way')
  })

  test('has a row for each supply where the circuit has one, and says what rings nothing', async () => {
    const { all } = show(fed)
    await stillness()
    const rows = all('.choices tbody').find((body) => body.textContent?.includes('rings nothing'))!
    expect(rows.querySelectorAll('tr')).toHaveLength(BUILT_IN.supplies.length)
    const first = rows.querySelector('tr')!
    expect(first.textContent).not.toContain('rings nothing')
  })

  test('says so where the worker fails', async () => {
    circuitWorkerHere({ choices: () => Promise.reject(new Error('no such wire')) })
    const { text } = show()
    await stillness()
    expect(text()).toContain(
      'Weighing the choices stopped unexpectedly (no such wire). Your plan is unchanged.',
    )
    expect(text()).not.toContain('Working it out')
  })

  test('is told in miles where the person reads US units', async () => {
    const { store, all } = show()
    act(() => {
      store.units.value = 'us'
    })
    await stillness()
    expect(all('.choices td')[0]!.textContent).toMatch(/^[\d.]+ mi$/)
  })
})

describe('plots', () => {
  test('name themselves and their figures to those who do not see', () => {
    const labels = show()
      .all('svg[role="img"]')
      .map((svg) => svg.getAttribute('aria-label'))
    expect(labels[0]).toMatch(/^Loss of speech, Hut to Ford\. dry: .+ at 300 Hz, .+ at 3400 Hz\. wet: /)
    expect(labels[1]).toMatch(/^Ring volts, .+ V at .+ V: the least the bell needs\.$/)
  })
  test('of a fed circuit show the battery’s volts too', () => {
    expect(
      show(fed)
        .all('.plot')
        .map((plot) => plot.querySelector('figcaption')!.textContent),
    ).toContain('Battery volts, Hut to Ford')
  })
})

test('studies follow the plan when it settles, and leave a drag alone', () => {
  const { store, all } = show()
  const says = () => all('svg[role="img"]')[0]!.getAttribute('aria-label')
  const before = says()
  act(() => store.preview((plan) => moveStation(plan, FORD, [11, 47.1])))
  expect(says()).toBe(before)
  act(() => store.settle())
  expect(says()).not.toBe(before)
})

describe('the battery', () => {
  test('is asked after only where there is one', () => {
    const sound = [HUT, FORD].reduce((plan, at) => setSet(plan, NET, at, 'sound-powered'), SMALL_PLAN)
    expect(show(sound).headings()).not.toContain('How long do the batteries last?')
    expect(show().headings()).toContain('How long do the batteries last?')
    expect(show(fed).headings()).toContain('How long do the batteries last?')
  })
  test('lasts the shorter the more is talked; the minutes are kept in the plan', () => {
    const { store, give, text, refusals } = show(fed)
    const days = () => Number(text().match(/about (\d+) (?:day|hour)/)![1])
    give('Talk a day', '10')
    const few = days()
    give('Talk a day', '100')
    expect(workOf(store.plan.value, 'talkMinutesPerDay')).toBe(100)
    expect(few / days()).toBeGreaterThan(3)
    give('Talk a day', '2000')
    expect(refusals()).toEqual(['Talk a day must lie between 0 min and 1440 min.'])
  })
  test.each([
    [null, 'as long as it keeps'],
    [3000, 'about 8 years'],
    [21.4, 'about 21 days, until the battery is spent'],
    [1.04, 'about 25 hours'],
    [0.001, 'about 1 hour'],
  ])('of %s days is told in words that fit', (days, words) => {
    const until = { code: days === null ? ('keeps' as const) : ('spent' as const) }
    const row = { set: null, days, until, atVolts: null, drain: null }
    expect(enduranceSentences([row], tongueOf(EMPTY_PLAN, 'metric'))[0]).toContain(words)
  })
})
