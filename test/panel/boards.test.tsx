// @vitest-environment page
import { act } from 'preact/test-utils'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { Panel } from '../../src/panel/panel'
import { addCircuit } from '../../src/plan/circuit-edits'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { setPairs } from '../../src/plan/line-edits'
import { setOver } from '../../src/plan/rider-edits'
import type { Selection } from '../../src/state/selection'
import { createStore } from '../../src/state/store'
import { boardsInARow, starPlan } from '../plan/star-plan'
import { page } from './page'

const STAR: Selection = { kind: 'circuit', id: 'star' as CircuitId }
const LINE = 'l-t1' as LineId

function show(plan = starPlan({ km: [1, 2, 3, 4, 14, 13] }), selection: Selection = STAR) {
  const store = createStore(plan)
  store.selection.value = selection
  return { store, ...page(<Panel store={store} />) }
}
const options = (root: Element, label: string) =>
  [...root.querySelectorAll('label')]
    .filter(({ textContent }) => textContent === label)
    .flatMap((each) => [...root.querySelector(`#${CSS.escape(each.htmlFor)}`)!.querySelectorAll('option')])

beforeAll(async () => {
  show()
  show(undefined, { kind: 'line', id: LINE, legs: [] })
  await vi.dynamicImportSettled()
})
afterAll(() => vi.dynamicImportSettled())

test('the card of a board says who is on which jack, and has its faint call in the corner of the triangle', async () => {
  const { root, headings } = show()
  await expect.poll(headings).toContain('Which calls through it are faint?')
  expect([...root.querySelectorAll('.jacks tbody tr')].map((row) => row.children[1]!.textContent)).toEqual(
    [1, 2, 3, 4, 5, 6].map((k) => `Post ${k}`),
  )
  const [corner] = root.querySelectorAll('.triangle td.fails')
  expect(corner?.closest('tr')?.textContent).toContain('Post 6')
})

test('a trunk is named on the jacks of both boards', async () => {
  for (const [id, other] of [
    ['c1', 'BOARD2'],
    ['c2', 'BOARD1'],
  ]) {
    const { root } = show(boardsInARow(2), { kind: 'circuit', id: id as CircuitId })
    await expect.poll(() => root.querySelector('.jacks')?.textContent).toContain(`trunk to ${other}`)
  }
})

test('a board that is too small is greyed out with its reason, one with room is not', () => {
  const { root } = show()
  const four = options(root, 'Supply').find(({ value }) => value === 'board-4-keys-drops')!
  expect(four.disabled).toBe(true)
  expect(four.textContent).toContain('too small, 6 lines come in')
  expect(options(root, 'Supply').find(({ value }) => value === 'board-12-monocord-drops')!.disabled).toBe(
    false,
  )
})

test('a circuit with coils takes no supply that sends current, and says why', () => {
  const pairs = setPairs(starPlan({ km: [1] }), LINE, 2)
  if (!pairs.ok) throw new Error('no pairs')
  const rider = addCircuit(pairs.value, { id: 'sx' as CircuitId, lines: [LINE], over: 'simplex' })
  if (!rider.ok) throw new Error(rider.problems[0]!.message)
  const { root } = show(rider.value, { kind: 'circuit', id: 'sx' as CircuitId })
  const feed = options(root, 'Supply').find(({ value }) => value === 'feed-48')!
  expect(feed.disabled).toBe(true)
  expect(feed.textContent).toContain('does not pass the coils')
})

test('a phantom wants two pairs, and says which line has too few; a simplex gets a rod at each set', async () => {
  const { root, store, give } = show(starPlan({ km: [1] }))
  const phantom = options(root, 'It goes over').find(({ value }) => value === 'phantom')!
  expect(phantom.disabled).toBe(true)
  expect(phantom.textContent).toContain('Hub – Post 1 has too few pairs')
  const simplex = setOver(store.plan.value, 'star' as CircuitId, 'simplex')
  if (!simplex.ok) throw new Error(simplex.problems[0]!.message)
  act(() => store.edit(() => simplex.value))
  expect(root.textContent).toContain('A pair of its own along the same way would take')
  give('Electrode at Post 1', '40')
  await expect
    .poll(() => store.plan.value.circuits.get('star' as CircuitId)!.electrodeOhms)
    .toEqual({ ['t1' as StationId]: 40 })
})

test('the card of a line offers a circuit without wire of its own', () => {
  const { root, store } = show(undefined, { kind: 'line', id: LINE, legs: [] })
  const details = [...root.querySelectorAll('details')].find(({ textContent }) =>
    textContent?.includes('One more circuit without more wire'),
  )!
  act(() => {
    details.open = true
    details.dispatchEvent(new Event('toggle'))
  })
  const [phantom, simplex] = [...details.querySelectorAll('button')]
  expect(phantom!.disabled).toBe(true)
  act(() => simplex!.click())
  const [, rider] = [...store.plan.value.circuits.values()]
  expect(rider).toMatchObject({ lines: [LINE], over: 'simplex' })
  expect(store.selection.value).toMatchObject({ kind: 'circuit', id: rider!.id })
})
