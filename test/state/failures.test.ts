// @vitest-environment page
import { signal } from '@preact/signals'
import { expect, test, vi } from 'vitest'
import type { LineId } from '../../src/plan/id'
import type { Plan } from '../../src/plan/plan'
import { moveStation } from '../../src/plan/station-edits'
import { effect } from '../../src/state/steady-effect'
import { createStore } from '../../src/state/store'
import { watchFailures } from '../../src/state/watch-failures'
import { FORD, LINE, SMALL_PLAN } from '../panel/small-plan'

/** A plan that no file and no edit can bring: what reckons it throws. */
const withoutWire = (plan: Plan): Plan => ({
  ...plan,
  lines: new Map([[LINE as LineId, { ...plan.lines.get(LINE)!, wire: 'no-such-wire' }]]),
})
const quiet = () => vi.spyOn(console, 'error').mockImplementation(() => undefined)

test('where a report throws, the last good figures stay and say so, until the change is undone', () => {
  const console = quiet()
  const store = createStore(SMALL_PLAN)
  const good = store.report.value
  expect(store.reportFailure.value).toBe('')
  store.edit(withoutWire)
  expect(store.report.value.lines).toEqual(good.lines)
  expect(store.reportFailure.value).toMatch(
    /^These figures are from before your last change: .*no-such-wire.* Undo the change, or save the plan as a file\.$/,
  )
  store.undo()
  expect(store.reportFailure.value).toBe('')
  expect(store.report.value.lines).toEqual(good.lines)
  expect(console).toHaveBeenCalled()
})

test('lines and circuits that are gone leave the old figures, and another plan has none of them', () => {
  quiet()
  const store = createStore(SMALL_PLAN)
  expect(store.report.value.lines).toHaveLength(1)
  store.open(withoutWire({ ...SMALL_PLAN, title: 'Another' }))
  expect(store.report.value).toMatchObject({ title: 'Another', lines: [], circuits: [] })
  expect(store.reportFailure.value).toMatch(/^The figures of this plan could not be worked out/)
})

test('an effect outlives a throw, which is told once', () => {
  const page = new EventTarget()
  vi.stubGlobal('reportError', (error: unknown) =>
    page.dispatchEvent(Object.assign(new Event('error'), { error })),
  )
  const failure = signal('')
  const stopWatching = watchFailures(failure, page)
  const store = createStore(SMALL_PLAN)
  const drawn: number[] = []
  const stop = effect(() => {
    const [, latDeg] = store.plan.value.stations.get(FORD)!.position
    if (latDeg > 47.2) throw new Error('the layer cannot draw this')
    drawn.push(latDeg)
  })
  store.edit((plan) => moveStation(plan, FORD, [11, 47.3]))
  expect(failure.value).toContain('(the layer cannot draw this)')
  failure.value = ''
  store.edit((plan) => moveStation(plan, FORD, [11, 47.4]))
  expect(failure.value).toBe('')
  store.edit((plan) => moveStation(plan, FORD, [11, 47.1]))
  expect(drawn).toEqual([47.01, 47.1])
  stop()
  stopWatching()
  vi.unstubAllGlobals()
})

test('errors of the page and forgotten rejections are told; what a person stopped is not', () => {
  const page = new EventTarget()
  const failure = signal('')
  const stop = watchFailures(failure, page)
  const reject = (reason: unknown) =>
    page.dispatchEvent(Object.assign(new Event('unhandledrejection'), { reason }))
  reject(new DOMException('stopped', 'AbortError'))
  page.dispatchEvent(
    Object.assign(new Event('error'), {
      message: 'ResizeObserver loop completed with undelivered notifications.',
    }),
  )
  expect(failure.value).toBe('')
  reject(new Error('the disk is gone'))
  expect(failure.value).toMatch(/^Something did not work \(the disk is gone\)\. Save the plan as a file/)
  stop()
})
