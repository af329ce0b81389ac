import { expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { pairsAsOne } from '../../src/catalog/pairs-as-one'
import { shelfOf } from '../../src/files/parse-shelf'
import { reportPlan } from '../../src/report/report-plan'
import { shelfAnswer } from '../../src/shelf/shelf-answer'

const wire = (id: string) => BUILT_IN.wires.find((each) => each.id === id)!

const netsOf = (value: object) => {
  const shelf = shelfOf({ places: ['Camp', 'Ford'], ...value })
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  return shelfAnswer(shelf.value).nets
}
const far = (m: number) => [
  [0, m],
  [m, 0],
]

test('two pairs of a network cable as one are what the catalog has of them', () => {
  const [made, printed] = [pairsAsOne(wire('network-24'), 2), wire('network-24-two')]
  for (const figure of [
    'loopOhmPerKm',
    'nanoFPerKm',
    'loopMilliHPerKm',
    'dryMicroSPerKm',
    'wetMicroSPerKm',
    'wornMicroSPerKm',
    'kgPerKm',
    'breakN',
  ] as const)
    expect(made[figure], figure).toBeCloseTo(printed[figure]!, 9)
})

test('four pairs of a cable carry farther than one, and the whole of it is on the shelf once', () => {
  const have = {
    wires: [{ wire: 'network-24', lengthM: 305, count: 12 }],
    sets: [{ set: 'common-carbon', count: 2 }],
    supplies: [{ supply: 'feed-24', count: 1 }],
  }
  const [one] = netsOf({ distancesM: far(2900), have, agree: 'all' })
  const cable = { ...have, wires: have.wires.map((each) => ({ ...each, pairs: 4 })) }
  const [several] = netsOf({ distancesM: far(2900), have: cable, agree: 'all' })
  expect(several!.judged.worstNepers).toBeGreaterThan(one!.judged.worstNepers)
  const { plan } = several!
  const { circuits, spools, cautions } = reportPlan(plan)
  expect(circuits[0]!.verdict).toBe(several!.judged.verdict)
  expect(spools.reduce((sum, { used }) => sum + used.length, 0)).toBeLessThanOrEqual(12)
  expect(cautions.filter(({ code }) => code === 'stock-short')).toEqual([])
})

test('what was measured of wire, bell, supply and cell is what the net is judged by', () => {
  const have = {
    wires: [{ wire: 'wd-1a', lengthM: 900, count: 2, measured: { loopOhmPerKm: 320 } }],
    sets: [{ set: 'crank-1600', count: 2, measured: { 'ringer.minVolts': 38 } }],
  }
  const [net] = netsOf({ distancesM: far(700), have })
  const { circuits, lines } = reportPlan(net!.plan)
  expect(circuits[0]!.ringing[0]!.minVolts).toBe(38)
  expect(lines[0]!.loopOhms / lines[0]!.wireM).toBeCloseTo(0.32, 6)
  const cells = netsOf({
    distancesM: far(700),
    agree: 'all',
    have: {
      wires: [{ wire: 'wd-1a', lengthM: 900, count: 1 }],
      sets: [{ set: 'desk-bell', count: 2 }],
      cells: [{ cell: '6lr61', count: 2, measured: { volts: 8.1 } }],
    },
  })
  const [battery] = cells[0]!.plan.catalog.supplies
  expect(battery!.volts).toBeCloseTo(16.2, 9)
  // Less is left in it than in fresh ones.
  expect(battery!.ampHours!).toBeLessThan(0.5)
  const bad = shelfOf({
    ...{ places: ['a', 'b'], distancesM: far(100) },
    have: { sets: [{ set: 'common-plain', count: 2, measured: { 'ringer.minVolts': -3 } }] },
  })
  expect(bad.ok).toBe(false)
})

test('nets are judged in the shelf’s own weather, and their plans have it', () => {
  const have = {
    wires: [{ wire: 'wd-1a', lengthM: 1609, count: 5 }],
    sets: [{ set: 'crank-1600', count: 2 }],
  }
  const [dry, wet] = ['dry', 'wet'].map(
    (weather) => netsOf({ distancesM: far(6000), weather, wireTempC: 35, have })[0]!,
  )
  expect(wet!.plan).toMatchObject({ weather: 'wet', wireTempC: 35 })
  expect(wet!.judged.today).toBeLessThan(dry!.judged.today)
  expect(reportPlan(wet!.plan).circuits[0]!.verdict).toBe(wet!.judged.verdict)
})
