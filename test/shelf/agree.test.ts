import { expect, test } from 'vitest'
import { shelfOf } from '../../src/files/parse-shelf'
import { countryOf } from '../../src/shelf/country'
import { findNets } from '../../src/shelf/find-nets'
import { isGood } from '../../src/shelf/rank-nets'
import { cases } from '../cases'
import { randomShelf } from './random-shelf'

const netsOf = (value: unknown) => {
  const shelf = shelfOf(value)
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  return findNets(countryOf(shelf.value)).nets.filter(isGood)
}

test('a net on which nobody can ring stands below every one that rings and holds at worst, unless they may agree on times', () => {
  const seen = { rings: 0, agreed: 0 }
  for (let seed = 1; seed <= cases(8); seed++) {
    const { agree: _, ...value } = randomShelf(7000 + seed, { places: 2, things: 7, spreadM: 2500 })
    const nets = netsOf(value)
    const ringing = nets.findLastIndex(({ judged }) => judged.silent.length === 0 && judged.worst !== 'fails')
    for (const { judged } of nets.slice(0, Math.max(0, ringing))) {
      expect(judged.silent).toEqual([])
      seen.rings++
    }
    // Who agrees on times has no need of a bell: nothing is silent, and nothing that they could have before is lost.
    const agreed = netsOf({ ...value, agree: 'all' })
    for (const { judged } of agreed) expect(judged.silent).toEqual([])
    expect(agreed.length > 0).toBe(nets.length > 0)
    if (nets.some(({ judged }) => judged.silent.length > 0)) seen.agreed++
  }
  expect(seen.rings).toBeGreaterThan(0)
  expect(seen.agreed).toBeGreaterThan(0)
})
