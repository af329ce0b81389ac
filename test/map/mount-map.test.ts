// @vitest-environment page
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mountMap } from '../../src/map/mount-map'
import { setSet } from '../../src/plan/circuit-edits'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { addLine } from '../../src/plan/line-edits'
import { EMPTY_PLAN } from '../../src/plan/plan'
import { addStation } from '../../src/plan/station-edits'
import { createStore, type Store } from '../../src/state/store'

const A = 'a' as StationId
const B = 'b' as StationId

function planOfOneLine() {
  let plan = addStation(EMPTY_PLAN, { id: A, name: 'Mill', position: [10, 47] })
  plan = addStation(plan, { id: B, name: 'Weir', position: [10.02, 47.01] })
  return addLine(plan, {
    id: 'l' as LineId,
    newCircuitId: 'c' as CircuitId,
    from: A,
    to: B,
    bends: [[10.01, 47]],
    wire: BUILT_IN.wires[0]!.id,
    lay: 'overhead',
  })
}

let element: HTMLElement
let store: Store
let unmount: () => void

const press = (key: string, more: KeyboardEventInit = {}) =>
  element
    .querySelector('.map-canvas')!
    .dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...more }))

beforeEach(async () => {
  vi.stubGlobal(
    'ResizeObserver',
    class {
      observe() {}
      disconnect() {}
    },
  )
  element = document.createElement('div')
  document.body.append(element)
  for (const [name, value] of [
    ['clientWidth', 800],
    ['clientHeight', 600],
  ] as const) {
    Object.defineProperty(HTMLElement.prototype, name, { configurable: true, get: () => value })
  }
  store = createStore(planOfOneLine())
  unmount = await mountMap(element, store)
})
afterEach(() => {
  unmount()
  element.remove()
  vi.unstubAllGlobals()
})

describe('the map', () => {
  test('shows a block for each station, with its name, and ticks across overhead wire', () => {
    expect(element.querySelectorAll('.station')).toHaveLength(2)
    expect([...element.querySelectorAll('.station-name')].map((name) => name.textContent)).toEqual([
      'Mill',
      'Weir',
    ])
    expect(element.querySelectorAll('.wire-overhead')).toHaveLength(1)
    expect(element.querySelectorAll('.wire-ticks')).toHaveLength(1)
    expect(element.querySelectorAll('.bend')).toHaveLength(1)
  })

  test('hangs the tags of a selected line, each with its number, and leaves the ends to the stations', () => {
    store.selection.value = { kind: 'line', id: 'l' as LineId, legs: [] }
    const tags = store.report.value.lines[0]!.tags
    expect(tags.length).toBeGreaterThan(2)
    expect(element.querySelectorAll('.tag')).toHaveLength(tags.length - 2)
    const numbers = [...element.querySelectorAll('.tag text')].map((label) => label.textContent)
    expect(numbers).toEqual(tags.slice(1, -1).map((tag) => `1/${tag.number}`))
  })

  test('marks the place of a fault while there is one', () => {
    const mark = element.querySelector('.fault')!
    expect(mark.classList.contains('hidden')).toBe(true)
    store.faultPlace.value = [10.01, 47]
    expect(mark.classList.contains('hidden')).toBe(false)
    const bend = element.querySelector('.bend')!
    const place = mark
      .getAttribute('transform')!
      .match(/-?[\d.]+/g)!
      .map(Number)
    const centre = bend
      .getAttribute('transform')
      ?.match(/-?[\d.]+/g)
      ?.map(Number) ?? [Number(bend.getAttribute('cx')), Number(bend.getAttribute('cy'))]
    expect(Math.hypot(place[0]! - centre[0]!, place[1]! - centre[1]!)).toBeLessThan(1)
    store.faultPlace.value = null
    expect(mark.classList.contains('hidden')).toBe(true)
  })

  test('follows the plan: what is removed goes, what comes back by undo is drawn again', () => {
    press('Tab')
    press('Delete')
    expect(element.querySelectorAll('.station')).toHaveLength(1)
    expect(element.querySelectorAll('.line')).toHaveLength(0)
    store.undo()
    expect(element.querySelectorAll('.station')).toHaveLength(2)
    expect(element.querySelectorAll('.line')).toHaveLength(1)
  })

  test('says what the keyboard has done', () => {
    press('Tab')
    expect(element.querySelector('[role=status]')!.textContent).toBe('Station Mill')
    expect(store.selection.value).toEqual({ kind: 'station', id: A })
  })

  test('moves a station by keys in one undo step', () => {
    press('Tab')
    press('ArrowRight', { altKey: true })
    press('ArrowRight', { altKey: true })
    expect(store.dragging.value).toBe(true)
    element
      .querySelector('.map-canvas')!
      .dispatchEvent(new KeyboardEvent('keyup', { key: 'Alt', bubbles: true }))
    expect(store.dragging.value).toBe(false)
    expect(store.plan.value.stations.get(A)!.position[0]).toBeGreaterThan(10)
    store.undo()
    expect(store.plan.value.stations.get(A)!.position[0]).toBe(10)
    expect(store.canUndo.value).toBe(false)
  })

  test('draws a line by keyboard: from a station, with a bend, to a new station', () => {
    press('Tab')
    store.tool.value = 'line'
    press('Enter')
    for (let i = 0; i < 4; i++) press('ArrowDown', { shiftKey: true })
    press(' ')
    for (let i = 0; i < 4; i++) press('ArrowRight', { shiftKey: true })
    press('Enter')
    expect(store.plan.value.stations.size).toBe(3)
    const line = [...store.plan.value.lines.values()].at(-1)!
    expect(line.from).toBe(A)
    expect(line.bends).toHaveLength(1)
    store.undo()
    expect(store.plan.value.stations.size).toBe(2)
  })

  /** A line under way from Mill, with one bend below it. */
  const beginLine = () => {
    press('Tab')
    store.tool.value = 'line'
    press('Enter')
    for (let i = 0; i < 4; i++) press('ArrowDown', { shiftKey: true })
    press(' ')
  }
  const hint = () => element.querySelector('.map-hint-words')!.textContent

  test('says what the line in hand does next, at every step', () => {
    store.tool.value = 'line'
    expect(hint()).toMatch(/^Click where the line starts/)
    beginLine()
    expect(hint()).toMatch(/^Click on; Done/)
    press('Escape')
    expect(hint()).toMatch(/^Click where the line starts/)
  })

  const deed = () => element.querySelector('.map-deed')!

  test('puts a half-drawn line aside under Escape or another tool, with no station left behind, and brings it back', () => {
    store.tool.value = 'line'
    for (let i = 0; i < 2; i++) press('ArrowDown', { shiftKey: true })
    const before = store.settled.value
    press(' ')
    for (let i = 0; i < 3; i++) press('ArrowRight', { shiftKey: true })
    press(' ')
    for (const putAside of [() => press('Escape'), () => (store.tool.value = 'select')]) {
      putAside()
      expect(store.settled.value).toBe(before)
      expect(store.plan.value).toBe(before)
      expect(deed().textContent).toMatch(/put aside/)
      expect(store.canUndo.value).toBe(true)
      store.undo()
      expect(store.tool.value).toBe('line')
      expect(hint()).toMatch(/^Click on; Done/)
    }
    press('Enter')
    expect(store.settled.value.lines.size).toBe(before.lines.size + 1)
    expect(store.settled.value.stations.size).toBe(before.stations.size + 2)
    store.undo()
    expect(store.settled.value).toBe(before)
  })

  test('shows a joint where no telephone stands, and a block where one does', () => {
    expect(element.querySelectorAll('.station .joint')).toHaveLength(2)
    store.edit((plan) => setSet(plan, 'c' as CircuitId, A, 'crank-1600'))
    expect(element.querySelectorAll('.station .joint')).toHaveLength(1)
    expect(element.querySelectorAll('.station .block')).toHaveLength(1)
  })

  test('tells what was moved, and what went along with a deleted line, with the way back at hand', () => {
    store.selection.value = { kind: 'station', id: A }
    press('m')
    press('ArrowRight')
    press('Enter')
    expect(deed().textContent).toMatch(/^Station Mill moved \d+ m\.Undo$/)
    deed().querySelector('button')!.click()
    expect(store.canUndo.value).toBe(false)
    store.selection.value = { kind: 'line', id: 'l' as LineId, legs: [] }
    press('Delete')
    expect(deed().textContent).toMatch(/^Line Mill – Weir deleted, and with it circuit Mill – Weir\./)
    deed().querySelector('button')!.click()
    expect([store.settled.value.lines.size, store.settled.value.circuits.size]).toEqual([1, 1])
  })

  test('takes back the last bend where undo or Delete is pressed while a line is drawn, and nothing drawn before', () => {
    beginLine()
    press('z', { ctrlKey: true })
    expect(store.canUndo.value).toBe(false)
    press('ArrowDown')
    press(' ')
    press('Delete')
    expect(store.settled.value.stations.size).toBe(2)
    press('ArrowRight', { shiftKey: true })
    press('Enter')
    expect([...store.plan.value.lines.values()].at(-1)!.bends).toHaveLength(0)
  })

  test('says that a line cannot end where it starts', () => {
    beginLine()
    for (let i = 0; i < 4; i++) press('ArrowUp', { shiftKey: true })
    press(' ')
    expect(element.querySelector('[role=status]')!.textContent).toMatch(/must end at another station/)
    expect(hint()).toMatch(/must end at another station/)
    expect(store.settled.value.lines.size).toBe(1)
  })

  test('sets the lay of the selected line by its letter', () => {
    store.selection.value = { kind: 'line', id: 'l' as LineId, legs: [1] }
    press('b')
    expect(store.plan.value.lines.get('l' as LineId)!.legs.map(({ lay }) => lay)).toEqual([
      'overhead',
      'buried',
    ])
  })

  test('lets Tab out of the map after the last stop', () => {
    const passes = () => press('Tab')
    expect(passes()).toBe(false)
    expect(passes()).toBe(false)
    expect(passes()).toBe(false)
    expect(passes()).toBe(true)
  })

  test('fits the map to a plan that is opened before it draws it: once', () => {
    const plan = addStation(planOfOneLine(), { id: 'far' as StationId, name: 'Far', position: [10.1, 47.1] })
    const made = vi.spyOn(document, 'createElementNS')
    store.open(plan)
    const halos = made.mock.results.filter(
      ({ value }) => (value as Element).getAttribute('class') === 'wire-halo',
    )
    made.mockRestore()
    expect(halos).toHaveLength(1)
  })

  test('draws a net across the antimeridian in one piece', () => {
    let plan = addStation(EMPTY_PLAN, { id: A, name: 'West', position: [179.99, -17] })
    plan = addStation(plan, { id: B, name: 'East', position: [-179.99, -17] })
    store.open(plan)
    const xs = [...element.querySelectorAll('.station .block')].map((block) =>
      Number(block.getAttribute('x')),
    )
    expect(Math.abs(xs[1]! - xs[0]!)).toBeLessThan(800)
    expect(xs[1]).toBeGreaterThan(xs[0]!)
  })

  test('lights up every line of the selected circuit', () => {
    expect(element.querySelectorAll('.leg-picked')).toHaveLength(0)
    store.selection.value = { kind: 'circuit', id: 'c' as CircuitId }
    expect(element.querySelectorAll('.leg-picked')).toHaveLength(2)
  })

  test('lets go of a bend when something else is selected', () => {
    for (let i = 0; i < 3; i++) press('Tab')
    expect(element.querySelectorAll('.bend.picked')).toHaveLength(1)
    store.selection.value = { kind: 'station', id: A }
    expect(element.querySelectorAll('.bend.picked')).toHaveLength(0)
  })

  test('leaves nothing behind when it goes', () => {
    unmount()
    expect(element.children).toHaveLength(0)
    unmount = () => undefined
  })
})
