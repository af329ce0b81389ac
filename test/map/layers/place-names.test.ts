import { expect, test } from 'vitest'
import { type Box, crosses, placeNames } from '../../../src/map/layers/place-names'

const box = (left: number, top: number): Box => ({ left, top, right: left + 10, bottom: top + 10 })

test('a name takes its most welcome place where nothing is in the way', () => {
  expect(placeNames([{ id: 'a', candidates: [box(0, 0), box(20, 0)] }], [], []).get('a')).toBe(0)
})

test('a name gives way to a symbol and to a name that stands already', () => {
  const candidates = [box(0, 0), box(20, 0), box(40, 0)]
  const places = placeNames(
    [
      { id: 'a', candidates },
      { id: 'b', candidates },
    ],
    [box(5, 5)],
    [],
  )
  expect(places.get('a')).toBe(1)
  expect(places.get('b')).toBe(2)
})

test('a name with no room is left out, and takes no room from the next', () => {
  const places = placeNames(
    [
      { id: 'a', candidates: [box(0, 0), box(4, 4)] },
      { id: 'b', candidates: [box(12, 12)] },
    ],
    [box(2, 2)],
    [],
  )
  expect([...places.keys()]).toEqual(['b'])
})

test('a name gives way to wire', () => {
  const wires = [{ from: { x: -5, y: -5 }, to: { x: 15, y: 15 } }]
  expect(placeNames([{ id: 'a', candidates: [box(0, 0), box(20, 0)] }], [], wires).get('a')).toBe(1)
})

test('a name stands where the edge of the screen does not cut it off, if there is such a place', () => {
  const screen = { left: 0, top: 0, right: 100, bottom: 100 }
  const names = [
    { id: 'a', candidates: [box(-5, 20), box(20, 20)] },
    { id: 'b', candidates: [box(95, 50), box(97, 60)] },
  ]
  expect([...placeNames(names, [], [], screen)]).toEqual([
    ['a', 1],
    ['b', 0],
  ])
})

test('a stretch crosses a rectangle that it passes through, not one that it passes by', () => {
  const through = { from: { x: -5, y: 5 }, to: { x: 15, y: 5 } }
  const corner = { from: { x: -6, y: 5 }, to: { x: 5, y: -6 } }
  expect(crosses(through, box(0, 0))).toBe(true)
  expect(crosses(corner, box(0, 0))).toBe(false)
  expect(crosses({ from: { x: 2, y: 2 }, to: { x: 3, y: 3 } }, box(0, 0))).toBe(true)
  expect(crosses({ from: { x: 20, y: 0 }, to: { x: 20, y: 9 } }, box(0, 0))).toBe(false)
})
