import { expect, test } from 'vitest'
import { shelfOf } from '../../src/files/parse-shelf'
import { reportPlan } from '../../src/report/report-plan'
import { shelfAnswer } from '../../src/shelf/shelf-answer'

/** The reserve of the first net between two places 700 m apart, and what its report says of the stock. */
function reserveOf(lengthM: number) {
  const shelf = shelfOf({
    places: [{ name: 'a' }, { name: 'b' }],
    distancesM: [
      [0, 700],
      [700, 0],
    ],
    talk: 'all',
    have: { wires: [{ wire: 'wd-1a', lengthM, count: 1 }], sets: [{ set: 'crank-wall-five-bar', count: 2 }] },
  })
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  const { plan } = shelfAnswer(shelf.value).nets[0]!
  const isShort = reportPlan(plan).cautions.some(({ code }) => code === 'stock-short')
  return { reservePct: plan.allowances.reservePct, isShort }
}

// 700 m on the ground at 20 % of slack with 8 m at each end are 856 m of wire; a tenth more are 942 m (PLAN-FORMAT: how length is reckoned).
test('a plan keeps a tenth in reserve where the shelf has it, and else none, so that its stock is never called short', () => {
  expect(reserveOf(900)).toEqual({ reservePct: 0, isShort: false })
  expect(reserveOf(1000)).toEqual({ reservePct: 10, isShort: false })
})
