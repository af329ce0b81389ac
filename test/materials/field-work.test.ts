import { describe, expect, test } from 'vitest'
import { seededNormal } from '../../src/budget/seeded'
import { laidSpells } from '../../src/field/laying-spells'
import { measurePlan } from '../../src/measure/measure-line'
import type { Plan } from '../../src/plan/plan'
import { reportPlan } from '../../src/report/report-plan'
import { fieldPlan, TEST_WIRE } from '../field/field-plan'

const LINE = { id: 'l1', from: 'a', to: 'b', wireM: 1200 }
const STOCK = { stock: [400, 400, 400, 400].map((lengthM) => ({ wire: 'w', lengthM, count: 1 })) }

const laid = (id: string, fromM: number, toM: number, more: object = {}) => ({
  ...{ id, line: 'l1', kind: 'laid', fromM, toM },
  ...more,
})
const planWith = (field: readonly object[], plan: object = {}): Plan =>
  fieldPlan([LINE], { field, plan: { ...STOCK, allowances: { tailM: 0, spliceWasteM: 0 }, ...plan } })
const piecesOf = (plan: Plan) =>
  reportPlan(plan).lines[0]!.pieces.map(({ spool, wireM }) => [spool, Math.round(wireM)])

describe('spools as they were really used', () => {
  test('take the place of those that were planned, and splices fall where one follows the other', () => {
    const planned = piecesOf(planWith([]))
    expect(planned.reduce((sum, [, wireM]) => sum + Number(wireM), 0)).toBe(1200)
    // The first spool was found to hold 350 m, and the fourth went on from there.
    const plan = planWith([laid('f1', 0, 350, { spool: 's1' }), laid('f2', 350, 700, { spool: 'box 4' })])
    const report = reportPlan(plan)
    expect(piecesOf(plan).slice(0, 2)).toEqual([
      ['s1', 350],
      ['box 4', 450],
    ])
    expect(piecesOf(plan).reduce((sum, [, wireM]) => sum + Number(wireM), 0)).toBe(1200)
    expect(report.lines[0]!.splices.map(([splice]) => Math.round(splice.wireM))).toEqual([350, 800])
    const { used, splices, leftM } = report.spools[0]!
    expect(splices).toBe(2)
    expect(leftM).toBeCloseTo(
      used.reduce((sum, each) => sum + each.leftM, 0),
      9,
    )
    expect(used.find(({ spool }) => spool === 's1')!.leftM).toBeCloseTo(50, 6)
  })
  test('bring their splices into the loop where splices have ohms', () => {
    const ohms = { allowances: { tailM: 0, spliceWasteM: 0, spliceOhms: 3 } }
    const of = (field: readonly object[]) => reportPlan(planWith(field, ohms)).lines[0]!.loopOhms
    // A fourth piece is one splice more, in both wires.
    const more = of([laid('f1', 0, 100, { spool: 'x' }), laid('f2', 100, 400, { spool: 's1' })]) - of([])
    expect(more).toBeCloseTo(6, 6)
  })
  test('are no more there once the wire is taken up, and change nothing where nobody names one', () => {
    const planned = piecesOf(planWith([]))
    expect(piecesOf(planWith([laid('f1', 0, 350)]))).toEqual(planned)
    const up = { id: 'f2', line: 'l1', kind: 'recovered', fromM: 0, toM: 350 }
    expect(piecesOf(planWith([laid('f1', 0, 350, { spool: 'odd' }), up]))).toEqual(planned)
  })
})

describe('what is left to do', () => {
  test('is what neither lies nor was taken up again, by wire, by spool and by hours', () => {
    const whole = reportPlan(planWith([]))
    expect(whole.left).toBeUndefined()
    const up = { id: 'f2', line: 'l1', kind: 'recovered', fromM: 0, toM: 100 }
    const { left, hours, lines } = reportPlan(planWith([laid('f1', 0, 500), up]))
    const [wire] = left!.wires
    expect(wire).toMatchObject({ wire: 'w' })
    expect(wire!.layM).toBeCloseTo(700, 6)
    expect(wire!.takeUpM).toBeCloseTo(400, 6)
    // 13 kg/km.
    expect(wire!.kg).toBeCloseTo(9.1, 6)
    expect(wire!.spools.reduce((sum, { layM }) => sum + layM, 0)).toBeCloseTo(700, 6)
    expect(wire!.spools.map(({ spool }) => spool)).toEqual(
      lines[0]!.pieces.slice(1).map(({ spool }) => spool),
    )
    expect(left!.layH).toBeCloseTo((hours.lines[0]!.totalH * 700) / 1200, 9)
    expect(left!.takeUpH).toBeCloseTo((hours.lines[0]!.recoveryH * 400) / 1200, 9)
  })
})

const at = (minutes: number) => new Date(Date.UTC(2026, 10, 25, 8) + minutes * 60_000).toISOString()

describe('hours of a crew', () => {
  test('are told by its own records of one line, rests left out', () => {
    const plan = planWith([
      laid('f1', 0, 0, { at: at(0), by: 'crew 1' }),
      laid('f2', 0, 600, { at: at(30), by: 'crew 1' }),
      laid('f3', 600, 900, { at: at(480), by: 'crew 1' }),
      laid('f4', 900, 1200, { at: at(495), by: 'crew 1' }),
      laid('f5', 0, 100, { at: at(10), by: 'crew 2' }),
    ])
    const spells = laidSpells(plan, measurePlan(plan))
    // Nine tenths of the wire are ground: 540 m in 30 minutes, 270 m in 15.
    expect(spells.map(({ groundM, hours }) => [Math.round(groundM), hours])).toEqual([
      [540, 0.5],
      [270, 0.25],
    ])
  })
  test('move from the planned rate to its own, the more the longer it has worked', () => {
    // A crew that truly takes twice as long, each piece of its work scattered about that.
    const normal = seededNormal(5)
    const rateAfter = (pieces: number) => {
      let minutes = 0
      const step = 1200 / 20
      const records = Array.from({ length: pieces + 1 }, (_, k) => {
        const record = laid(`f${k}`, Math.max(0, k - 1) * step, k * step, { at: at(minutes), by: 'crew' })
        // 54 m of ground at 2.5 km/h take 1.3 minutes.
        minutes += 2 * ((0.9 * step) / 2500) * 60 * Math.exp(0.2 * normal())
        return record
      })
      return reportPlan(planWith(records, { work: { spliceMin: 0 } })).hours.learned?.find(
        ({ what }) => what === 'surface',
      )
    }
    expect(rateAfter(0)).toBeUndefined()
    const [little, much] = [rateAfter(4)!, rateAfter(20)!]
    expect(little.plannedKmPerHour).toBe(2.5)
    expect(little.kmPerHour).toBeLessThan(2.5)
    expect(much.kmPerHour).toBeLessThan(little.kmPerHour)
    // 52 minutes of work: w = 0.354² / (0.354² + 0.24² / 0.87) = 0.65, and 2.5 · 2^−0.65 = 1.59 km/h, within the scatter of 20 pieces.
    expect(much.hours).toBeGreaterThan(0.7)
    expect(much.kmPerHour).toBeGreaterThan(1.45)
    expect(much.kmPerHour).toBeLessThan(1.75)
  })
  test('reach the hours of every line that is still to be laid', () => {
    const records = [laid('f1', 0, 0, { at: at(0) }), laid('f2', 0, 1200, { at: at(120) })]
    const two = (field: readonly object[]) =>
      reportPlan(
        fieldPlan([LINE, { id: 'l2', from: 'b', to: 'c', wireM: 2000 }], { field, wires: [TEST_WIRE] }),
      ).hours.lines[1]!.layingH
    expect(two(records)).toBeGreaterThan(1.5 * two([]))
  })
})
