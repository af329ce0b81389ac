import { describe, expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mergeCatalogs } from '../../src/catalog/catalog'
import { GEAR_KG, GEAR_KINDS, GEAR_PRACTICE, GEAR_SOURCES } from '../../src/catalog/line-gear'
import { gearOfLine } from '../../src/materials/line-gear'
import { packTrips } from '../../src/materials/pack-trips'
import { linesByCrew } from '../../src/materials/share-lines'
import { loadAllowancesOf } from '../../src/materials/work-allowances'
import { EMPTY_PLAN, type Leg, type Plan } from '../../src/plan/plan'
import { reportPlan } from '../../src/report/report-plan'
import { METRES_PER_FOOT } from '../../src/units'
import { demoPlan } from '../sheet/demo-source'
import { wildNet } from '../sheet/wild-net'

const packed = (plan: Plan) => {
  const report = reportPlan(plan)
  const gear = new Map(
    report.lines.map(({ id, legs, tags }) => [id, gearOfLine(plan.lines.get(id)!, legs, tags.length)]),
  )
  const used = report.spools.flatMap(({ wire, used: own }) => own.map((spool) => ({ wire, ...spool })))
  const pieces = new Map(report.lines.map((line) => [line.id, line.pieces]))
  const allowances = loadAllowancesOf(plan)
  const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
  const crews = linesByCrew(report.hours)
  return {
    report,
    allowances,
    used,
    ...packTrips(plan, catalog, { loads: report.loads, pieces, used, gear }, crews, allowances),
  }
}

const PLANS: readonly (readonly [string, Plan])[] = [
  ['the demo', demoPlan()],
  ['the demo with three crews', { ...demoPlan(), work: { crews: 3 } }],
  ['the demo with people who carry little', { ...demoPlan(), work: { personLimitKg: 8, peoplePerCrew: 6 } }],
  ['an empty plan', EMPTY_PLAN],
  ...Array.from(
    { length: 12 },
    (_, i) => [`net ${i}`, { ...wildNet(i + 1, 3 + 3 * i), work: { crews: 1 + (i % 4) } }] as const,
  ),
]

describe.each(PLANS)('%s, packed', (_, plan) => {
  const { report, rows, crews, allowances, used } = packed(plan)

  test('has each thing of the report in just one row, and the spares as spares', () => {
    for (const { thing, count, spare } of report.loads.items) {
      const own = rows.filter((row) => JSON.stringify(row.thing) === JSON.stringify(thing))
      expect(own.reduce((sum, row) => sum + row.count, 0)).toBe(count)
      expect(own.reduce((sum, row) => sum + (row.isSpare ? row.count : 0), 0)).toBe(spare)
    }
  })

  test('weighs what the report weighs', () => {
    const kg = rows.reduce((sum, row) => sum + row.count * row.eachKg, 0)
    expect(kg).toBeCloseTo(report.loads.totalKg, 6)
    expect(crews.reduce((sum, each) => sum + each.kg, 0)).toBeCloseTo(report.loads.totalKg, 6)
  })

  test('names every spool that is used once', () => {
    expect(rows.flatMap(({ spools }) => spools).sort()).toEqual(used.map(({ spool }) => spool).sort())
  })

  test('gives no trip more than its people carry, but for one thing that more must help with', () => {
    const people = Math.max(1, Math.round(allowances.people / allowances.crews))
    for (const { crew, trips } of crews) {
      for (let trip = 0; trip < trips; trip++) {
        const own = rows.filter((row) => row.crew === crew && row.trip === trip)
        const kg = own.reduce((sum, row) => sum + row.count * row.eachKg, 0)
        const count = own.reduce((sum, row) => sum + row.count, 0)
        expect(kg <= people * allowances.perPersonKg + 1e-9 || count === 1).toBe(true)
      }
    }
  })

  test('takes the tools on the first trip', () => {
    for (const { crew } of crews.filter(({ kg }) => kg > 0))
      expect(rows.some((row) => row.crew === crew && row.trip === 0 && row.thing.kind === 'tools')).toBe(true)
  })
})

test('one crew goes as often as the report says', () => {
  const { report, crews } = packed(demoPlan())
  expect(crews.map(({ trips }) => trips)).toEqual([report.loads.trips])
  expect(crews[0]!.personLoads).toBe(report.loads.personLoads)
})

// US Army subcourse SS0440, p. 1-27: a lance each 100 ft, two guys at each, four at every tenth; p. 1-25: a stake at the foot.
test('a thousand feet overhead take eleven lances, twenty-four guys and a stake for each guy and each foot', () => {
  const legs: readonly Leg[] = [{ lay: 'overhead' }]
  const gear = gearOfLine({ legs, return: 'pair' }, [{ mapM: 1000 * METRES_PER_FOOT }], 3)
  expect(gear).toEqual({ tag: 3, rod: 0, lance: 11, guy: 24, stake: 35, weight: 0 })
})

test('two overhead legs share the lance between them; others in between part them', () => {
  const span = { lay: 'overhead' } as const
  const lances = (legs: readonly Leg[]) =>
    gearOfLine(
      { legs, return: 'pair' },
      legs.map(() => ({ mapM: 20 })),
      0,
    ).lance
  expect(lances([span, span])).toBe(3)
  expect(lances([span, { lay: 'surface' }, span])).toBe(4)
})

// NEC 800.100(B)(3)(2): 5 ft. A rod of 16 mm: its volume times 7850 kg/m³, the density of steel.
test('a ground rod weighs what its steel does, and an earth return takes two', () => {
  expect(GEAR_KG.rod).toBeCloseTo((Math.PI / 4) * 0.016 ** 2 * 1.5 * 7850, 1)
  expect(gearOfLine({ legs: [{ lay: 'surface' }], return: 'earth' }, [{ mapM: 100 }], 0).rod).toBe(2)
})

test('each mass and each practice says where it comes from', () => {
  for (const kind of [...GEAR_KINDS, 'guysAtLance', 'stakesAtFoot', 'weightEveryM'])
    expect(GEAR_SOURCES[kind], kind).toBeDefined()
  expect(Object.keys(GEAR_PRACTICE)).toContain('guysAtTenth')
})
