import { expect, test } from 'vitest'
import { doneOn, lengthM } from '../../src/field/stretches'
import type { LineId } from '../../src/plan/id'
import type { StandingRecord } from '../../src/plan/standing-records'

const done = (...steps: readonly (readonly ['laid' | 'tested' | 'recovered', number, number])[]) =>
  doneOn(
    steps.map(
      ([kind, fromM, toM], k): StandingRecord => ({ id: `f${k}`, line: 'l' as LineId, kind, fromM, toM }),
    ),
  )

test('stretches that overlap or meet count once', () => {
  const { laid } = done(['laid', 0, 400], ['laid', 900, 1000], ['laid', 300, 500], ['laid', 500, 700])
  expect(laid).toEqual([
    { fromM: 0, toM: 700 },
    { fromM: 900, toM: 1000 },
  ])
  expect(lengthM(laid)).toBe(800)
})

test('what is recovered lies there no more and is no longer tested, until it is laid anew', () => {
  const up = done(['laid', 0, 1000], ['tested', 0, 600], ['recovered', 400, 700])
  expect([up.laid, up.tested, up.recovered].map(lengthM)).toEqual([700, 400, 300])
  const again = done(['laid', 0, 1000], ['recovered', 400, 700], ['laid', 500, 600])
  expect([again.laid, again.recovered].map(lengthM)).toEqual([800, 200])
})

test('a stretch of no length does nothing', () => {
  expect(done(['laid', 5, 5])).toEqual({ laid: [], tested: [], recovered: [] })
})
