import { describe, expect, test } from 'vitest'
import { ALL_CHECKS } from './all-checks'
import { type Check, differencePct } from './check'

const all = ALL_CHECKS.flatMap(({ list }) => list)

describe.each(ALL_CHECKS)('$subject', ({ list }) => {
  test.each(list as Check[])('agree with $source.work: $what', (check) => {
    const { computed, published, unit, tolerancePct } = check
    expect(differencePct(check), `${computed} ${unit}, published ${published}`).toBeLessThanOrEqual(
      tolerancePct,
    )
  })
})

test('at least 80 figures of at least 25 works are checked, none of them twice', () => {
  expect(all.length).toBeGreaterThanOrEqual(80)
  expect(new Set(all.map(({ source }) => source.work)).size).toBeGreaterThanOrEqual(25)
  const keys = all.map(({ source, what }) => `${source.work} | ${source.place} | ${what}`)
  expect(keys.filter((key, k) => keys.indexOf(key) !== k)).toEqual([])
})
