// @vitest-environment page
import { act } from 'preact/test-utils'
import { expect, test, vi } from 'vitest'
import { FailureBanner } from '../../src/panel/failure-banner'
import { Fallible } from '../../src/panel/fallible'
import { moveStation } from '../../src/plan/station-edits'
import { createStore } from '../../src/state/store'
import { page } from './page'
import { FORD, SMALL_PLAN } from './small-plan'

test('a card that throws leaves a sentence, and ways to save and to undo; the next edit draws it anew', async () => {
  vi.spyOn(console, 'error').mockImplementation(() => undefined)
  const store = createStore(SMALL_PLAN)
  const latitude = () => store.plan.value.stations.get(FORD)!.position[1]
  function Card() {
    if (latitude() > 47.2) throw new Error('too far north')
    return <p>Ford lies at {latitude()}</p>
  }
  const { text, press, all } = page(
    <Fallible store={store} what="The side panel">
      <Card />
    </Fallible>,
  )
  act(() => store.edit((plan) => moveStation(plan, FORD, [11, 47.3])))
  expect(text()).toContain('The side panel could not be shown (too far north). The plan itself is kept.')
  expect(all('button').map((button) => button.textContent)).toEqual([
    'Undo',
    'Save the plan as a file…',
    'Try again',
  ])
  press('Undo')
  await act(() => new Promise<void>((resolve) => setTimeout(resolve, 50)))
  expect(text()).toContain('Ford lies at 47.01')
})

test('what nobody foresaw stands in a banner until it is understood', () => {
  const store = createStore(SMALL_PLAN)
  const { text, press } = page(<FailureBanner store={store} />)
  expect(text()).toBe('')
  act(() => {
    store.failure.value = 'Something did not work (so and so).'
  })
  expect(text()).toContain('so and so')
  press('Understood')
  expect(text()).toBe('')
})
