import { describe, expect, test } from 'vitest'
import { ALL_CHECKS } from './all-checks'
import { type Check, differencePct, knownAs } from './check'

const all = ALL_CHECKS.flatMap(({ list }) => list)

describe.each(ALL_CHECKS)('$subject', ({ list }) => {
  test.each(list as Check[])('agree with $source.work: $what', (check) => {
    const { computed, published, unit, tolerancePct } = check
    expect(differencePct(check), `${computed} ${unit}, published ${published}`).toBeLessThanOrEqual(
      tolerancePct,
    )
  })
})

test('at least 100 figures read in at least 35 works are checked, none of them the figure that the code is made of, and none twice', () => {
  const read = all.filter((check) => knownAs(check) === 'read')
  expect(read.length).toBeGreaterThanOrEqual(100)
  expect(new Set(read.map(({ source }) => source.work)).size).toBeGreaterThanOrEqual(35)
  const keys = all.map(({ source, what }) => `${source.work} | ${source.place} | ${what}`)
  expect(keys.filter((key, k) => keys.indexOf(key) !== k)).toEqual([])
})

test('a check with a tolerance says why', () => {
  expect(all.filter(({ tolerancePct, because }) => tolerancePct > 0 && because.length < 8)).toEqual([])
})
