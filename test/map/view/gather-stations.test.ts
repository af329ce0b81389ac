import { expect, test } from 'vitest'
import { countHere, gatherStations } from '../../../src/map/view/gather-stations'
import type { StationId } from '../../../src/plan/id'

const at = (...places: readonly (readonly [number, number])[]) =>
  places.map(([x, y], i) => ({ id: `s${i}` as StationId, at: { x, y } }))
const counts = (...places: readonly (readonly [number, number])[]) =>
  gatherStations(at(...places)).map(({ stations }) => stations.length)

test('stations whose symbols lie on each other are one count; those beside each other are not', () => {
  expect(counts([0, 0], [19, 0])).toEqual([2])
  expect(counts([0, 0], [0, 13])).toEqual([2])
  expect(counts([0, 0], [21, 0])).toEqual([1, 1])
  expect(counts([0, 0], [0, 15])).toEqual([1, 1])
})

test('a count takes in what would crowd it', () => {
  expect(counts([0, 0], [10, 0], [38, 0], [60, 0])).toEqual([3, 1])
})

test('every station is somewhere, once', () => {
  const places = Array.from({ length: 400 }, (_, i) => [(i * 37) % 300, (i * 53) % 200] as const)
  const all = gatherStations(at(...places)).flatMap(({ stations }) => stations)
  expect(new Set(all).size).toBe(400)
  expect(all).toHaveLength(400)
})

test('only a count is clicked as one', () => {
  const gathered = gatherStations(at([0, 0], [5, 0], [100, 0]))
  expect(countHere(gathered, { x: 8, y: 5 })?.stations).toHaveLength(2)
  expect(countHere(gathered, { x: 30, y: 0 })).toBeUndefined()
  expect(countHere(gathered, { x: 100, y: 0 })).toBeUndefined()
})
