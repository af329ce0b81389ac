import { expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { shelfOf } from '../../src/files/parse-shelf'
import { reportPlan } from '../../src/report/report-plan'
import { countryOf } from '../../src/shelf/country'
import { barePlan } from '../../src/shelf/net-plan'
import { shelfAnswer } from '../../src/shelf/shelf-answer'
import { answerInWords } from '../../src/words/json-shelf'
import { cases } from '../cases'
import { bestByHand } from './every-net-oracle'
import { randomShelf } from './random-shelf'

const answerOf = (value: unknown) => {
  const shelf = shelfOf(value)
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  return shelfAnswer(shelf.value)
}

const places = [{ name: 'Camp' }, { name: 'Ford' }]
const far = (m: number) => [
  [0, m],
  [m, 0],
]
const sets = [{ set: 'crank-1600', count: 2 }]
const rods = [{ rod: 'rod-1-5', count: 2 }]

test('900 m of pair taken apart and two earth rods reach 1,300 m, and what that is worth is said', () => {
  const have = { wires: [{ wire: 'wd-1a', lengthM: 900, count: 1 }], sets }
  expect(answerOf({ places, distancesM: far(1300), have }).nets).toEqual([])
  // 2 × 900 m are two wires: no third.
  expect(answerOf({ places, distancesM: far(1560), have: { ...have, rods } }).nets).toEqual([])
  const answer = answerOf({ places, distancesM: far(1300), have: { ...have, rods } })
  const { nets } = answerInWords(answer, (plan) => plan)
  const [net] = nets
  expect(net?.verdict).not.toBe('fails')
  expect(net?.title).toContain('earth return')
  expect(net?.why).toMatch(/2 earth rods.*clay.*when dry.*a pair is better/)
  const [line] = net!.plan.lines.values()
  // Dwight: 40.6 Ω·m about a rod of 1.5 m and 16 mm, 24.1 Ω.
  const ohms = (40.6 / (2 * Math.PI * 1.5)) * (Math.log((8 * 1.5) / 0.016) - 1)
  expect(line!.return).toBe('earth')
  expect(line!.electrodeOhms![0]).toBeCloseTo(ohms, -0.5)
  const report = reportPlan(net!.plan)
  expect(report.circuits[0]!.verdict).toBe(net!.verdict)
  expect(report.cautions.map(({ code }) => code)).toContain('earth-return')
  expect(report.cautions.map(({ code }) => code)).not.toContain('stock-short')
  // The pair taken apart weighs what it weighed.
  expect(report.spools[0]!.kg).toBeLessThan(14)
})

test('where a pair does it, nobody is offered the earth; one rod is none', () => {
  const have = { wires: [{ wire: 'wd-1a', lengthM: 900, count: 1 }], sets, rods }
  const answer = answerOf({ places, distancesM: far(500), have })
  expect(answer.nets.length).toBeGreaterThan(0)
  for (const { earthed } of answer.nets) expect(earthed).toBe(0)
  const lone = { ...have, rods: [{ rod: 'rod-1-5', count: 1 }] }
  expect(answerOf({ places, distancesM: far(1300), have: lone }).nets).toEqual([])
})

test('what a meter read of a rod takes the place of the soil; single wires make a pair, two of them', () => {
  const one = { wire: 'wd-1a', lengthM: 900, single: true }
  const measured = [{ rod: 'rod-1-5', count: 2, measured: { ohms: 380 } }]
  const apart = answerOf({
    ...{ places, distancesM: far(600), have: { wires: [{ ...one, count: 1 }], sets, rods: measured } },
  })
  const [line] = apart.nets[0]!.plan.lines.values()
  expect(line).toMatchObject({ return: 'earth', electrodeOhms: [380, 380] })
  const both = answerOf({ places, distancesM: far(600), have: { wires: [{ ...one, count: 2 }], sets } })
  const [pair] = both.nets[0]!.plan.lines.values()
  expect(pair).toMatchObject({ return: 'pair', wire: 'wd-1a' })
  expect(both.nets[0]!.plan.stock).toEqual([{ wire: 'wd-1a', lengthM: 900, count: 1 }])
})

test('with earth rods too the first net of small shelves is the best of all that can be put together', () => {
  let earthed = 0
  for (let seed = 1; seed <= cases(3); seed++) {
    const drawn = randomShelf(8100 + seed, { places: seed % 3 === 0 ? 3 : 2, things: 5, spreadM: 900 })
    const wires = drawn.have.wires
      .slice(0, 1)
      .map((each) => ({ ...each, lengthM: Math.round(each.lengthM * 0.7) }))
    const value = { ...drawn, have: { ...drawn.have, wires, rods: [{ rod: 'rod-2-4', count: 4 }] } }
    const shelf = shelfOf(value)
    if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
    const country = countryOf(shelf.value)
    const { nets } = shelfAnswer(shelf.value)
    const { ohms } = country.rods[0]!
    const bends = (a: number, b: number) => country.way(a, b).bends
    const truth = bestByHand(shelf.value, barePlan(country), bends, { rods: 4, ohms })
    const first = nets.find(
      ({ judged, joints }) => judged.verdict !== 'fails' && judged.speaks && joints === 0,
    )
    expect(first?.rank.slice(0, 7), JSON.stringify(value)).toEqual(truth.rank)
    for (const net of nets) {
      const read = parsePlan(formatPlan(net.plan))
      if (!read.ok) throw new Error(JSON.stringify(read.problems))
      expect(reportPlan(read.value).circuits.map(({ verdict }) => verdict)).toContain(net.judged.verdict)
    }
    if (first && first.earthed > 0) earthed++
  }
  expect(earthed).toBeGreaterThan(0)
})
