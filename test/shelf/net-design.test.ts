import { expect, test } from 'vitest'
import { CELLS } from '../../src/catalog/cells'
import { shelfOf } from '../../src/files/parse-shelf'
import { batteriesOf } from '../../src/shelf/battery'
import { countryOf } from '../../src/shelf/country'
import { isThere, type NetDesign, takenBy } from '../../src/shelf/net-design'

/** Two pairs of places that call each other, and what there is for them. */
function countryWith(have: Readonly<Record<string, unknown>>) {
  const shelf = shelfOf({
    places: ['a', 'b', 'c', 'd'].map((name, k) => ({ name, lon: 9 + k / 1000, lat: 47 })),
    talk: [
      ['a', 'b'],
      ['c', 'd'],
    ],
    have: { wires: [{ wire: 'wd-1a', lengthM: 400, count: 2 }], ...have },
  })
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  return countryOf(shelf.value)
}

/** A line between each two, with a telephone at both ends, and of a kind of supply one at the first of them. */
const twoLines = (supply: number | null): NetDesign =>
  [
    [0, 1],
    [2, 3],
  ].map(([a, b]) => ({
    edges: [{ edge: [a!, b!] as const, run: 0 }],
    sets: new Map([
      [a!, 0],
      [b!, 0],
    ]),
    supply: supply === null ? null : { kind: supply, at: a! },
  }))

test('two batteries of two cells take four off the shelf, and three are not enough', () => {
  const country = countryWith({
    sets: [{ set: 'desk-bell', count: 4 }],
    cells: [{ cell: '6lr61', count: 3 }],
  })
  const design = twoLines(country.supplies.findIndex(({ cells }) => cells?.each === 2))
  expect(takenBy(country, design).cells).toEqual([4])
  expect(isThere(country, takenBy(country, design))).toBe(false)
  expect(isThere(country, takenBy(country, design.slice(0, 1)))).toBe(true)
})

test('two calls of two telephones each take four, and three are not enough', () => {
  const isThereOf = (count: number) => {
    const country = countryWith({ sets: [{ set: 'crank-wall-five-bar', count }] })
    return isThere(country, takenBy(country, twoLines(null)))
  }
  expect([3, 4].map(isThereOf)).toEqual([false, true])
})

test('three cells make batteries of one, two and three, and sixteen make none above 60 V', () => {
  const voltsOf = (count: number) =>
    batteriesOf(CELLS.find(({ id }) => id === '6lr61')!, { count }, () => false).map(
      ({ supply }) => supply.volts,
    )
  expect(voltsOf(3)).toEqual([9, 18, 27])
  expect(Math.max(...voltsOf(16))).toBe(54)
})
