import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { addStation, renameStation } from '../../src/plan/station-edits'
import { setNote, setTitle } from '../../src/plan/text-edits'
import type { WindowWord } from '../../src/share/window-words'
import { windowsPlan } from '../../src/share/windows'
import { createStore } from '../../src/state/store'

const base = addStation(
  { ...EMPTY_PLAN, title: 'Begun' },
  { id: 'a' as StationId, name: 'A', position: [10, 47] },
)

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

/** Windows that hear each other; words can be lost on the way. */
function air() {
  const ears = new Set<(event: MessageEvent) => void>()
  const lost: { isOn: boolean } = { isOn: false }
  return {
    lost,
    window: (plan: Plan) => {
      const store = createStore(plan)
      const own = new Set<(event: MessageEvent) => void>()
      const channel = {
        addEventListener: (_: 'message', hear: (event: MessageEvent) => void) => {
          own.add(hear)
          ears.add(hear)
        },
        removeEventListener: (_: 'message', hear: (event: MessageEvent) => void) => {
          own.delete(hear)
          ears.delete(hear)
        },
      }
      const say = (word: WindowWord) => {
        if (lost.isOn) return
        const data = structuredClone(word)
        for (const hear of ears) if (!own.has(hear)) hear({ data } as MessageEvent)
      }
      return { store, channel, say }
    },
  }
}

function twoWindows() {
  const { window, lost } = air()
  const [one, two] = [window(base), window(base)]
  const first = windowsPlan(one.store, one.say, one.channel, null)!
  one.store.sharing.value = first
  const second = windowsPlan(two.store, two.say, two.channel, { ...first.begin!(), base })!
  two.store.sharing.value = second
  vi.advanceTimersByTime(1000)
  const settle = () => vi.advanceTimersByTime(1000)
  return { one: one.store, two: two.store, first, second, lost, settle, window }
}

const name = (plan: Plan) => plan.stations.get('a' as StationId)?.name

test('what one window does is done in the other, and undo takes back only what its own did', () => {
  const { one, two, settle } = twoWindows()
  one.edit((plan) => renameStation(plan, 'a' as StationId, 'Camp'))
  two.edit((plan) => setTitle(plan, 'Net'))
  settle()
  for (const { plan } of [one, two]) expect([name(plan.value), plan.value.title]).toEqual(['Camp', 'Net'])
  one.undo()
  settle()
  for (const { plan } of [one, two]) expect([name(plan.value), plan.value.title]).toEqual(['A', 'Net'])
  expect(one.sharing.value?.others.value).toHaveLength(1)
})

test('undo where the other has changed the same since leaves theirs, and says so', () => {
  const { one, two, settle } = twoWindows()
  one.edit((plan) => setTitle(plan, 'One'))
  settle()
  two.edit((plan) => setTitle(plan, 'Two'))
  settle()
  one.undo()
  settle()
  expect(one.plan.value.title).toBe('Two')
  expect(one.notice.value).toMatch(/theirs stays/)
  expect(two.notice.value).toBe('')
})

test('what a window had done before it joined is not lost', () => {
  const { window } = air()
  const [one, two] = [window(base), window(base)]
  one.store.edit((plan) => setTitle(plan, 'One'))
  two.store.edit((plan) => setNote(plan, 'Two'))
  const first = windowsPlan(one.store, one.say, one.channel, null)!
  windowsPlan(two.store, two.say, two.channel, { ...first.begin!(), base })
  vi.advanceTimersByTime(1000)
  for (const { store } of [one, two])
    expect([store.plan.value.title, store.plan.value.note]).toEqual(['One', 'Two'])
})

test('words that were lost on the way are made good', () => {
  const { one, two, lost, settle } = twoWindows()
  lost.isOn = true
  one.edit((plan) => setTitle(plan, 'Unheard'))
  settle()
  lost.isOn = false
  expect(two.plan.value.title).toBe('Begun')
  vi.advanceTimersByTime(20_000)
  expect(two.plan.value.title).toBe('Unheard')
})

test('the last window that is left works on alone, with all that the other had said', () => {
  const { one, two, second } = twoWindows()
  two.edit((plan) => setTitle(plan, 'Last word'))
  second.leave()
  expect(one.sharing.value).toBeNull()
  expect(one.plan.value.title).toBe('Last word')
  one.edit((plan) => setNote(plan, 'alone'))
  vi.advanceTimersByTime(1000)
  expect(two.plan.value.note).toBe('')
})

test('a window that opens another plan is left alone with it', async () => {
  const { one, two, settle } = twoWindows()
  one.open({ ...EMPTY_PLAN, title: 'Other' })
  await Promise.resolve()
  two.edit((plan) => setTitle(plan, 'Mine'))
  settle()
  expect(one.plan.value.title).toBe('Other')
  expect(one.sharing.value).toBeNull()
})

test('a drag in one window is not cut off by what the other does', () => {
  const { one, two, settle } = twoWindows()
  one.preview((plan) => setTitle(plan, 'In hand'))
  two.edit((plan) => setNote(plan, 'meanwhile'))
  settle()
  expect(one.dragging.value).toBe(true)
  one.settle()
  settle()
  for (const { plan } of [one, two])
    expect([plan.value.title, plan.value.note]).toEqual(['In hand', 'meanwhile'])
})
