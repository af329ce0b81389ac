import { describe, expect, test } from 'vitest'
import { CHECKS } from '../../src/budget/checks'
import { RANK } from '../../src/budget/verdict'
import { measurePlan } from '../../src/measure/measure-line'
import { pointAtGroundM } from '../../src/measure/place-on-line'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import type { Plan } from '../../src/plan/plan'
import { addStation } from '../../src/plan/station-edits'
import { bestPlaces, putThing, type Spot, type SpotIds, type Thing } from '../../src/report/best-places'
import type { ReportCircuit } from '../../src/report/report'
import { reportPlan } from '../../src/report/report-plan'
import { at, planOf } from '../terrain/made-plan'

const C = 'c' as CircuitId
const IDS: SpotIds = {
  station: 'new' as StationId,
  secondHalf: 'new-half' as LineId,
  line: 'new-line' as LineId,
}

/** Two common-battery telephones 5 km apart over thin wire, the feed beside one of them. */
function longLine(set: string, supply: string): Plan {
  const { plan, line } = planOf(
    [
      [0, 0],
      [2000, 900],
      [4200, 0],
    ],
    ['surface', 'surface'],
  )
  const [a, b] = [line.from, line.to]
  return {
    ...plan,
    lines: new Map([[line.id, { ...line, wire: 'bell-wire-0-2' }]]),
    circuits: new Map([
      [
        C,
        {
          ...{ id: C, name: 'Long', lines: [line.id], supply: { type: supply, at: a } },
          sets: new Map([
            [a, set],
            [b, set],
          ]),
        },
      ],
    ]),
  }
}

/** The least that the report has to spare at worst, in nepers, over all its rows. */
function leastAtWorst({ worst }: ReportCircuit): number {
  const rows = [
    ...worst.loop.map(({ mA, minMA }) => CHECKS.loop.spare(mA, minMA)),
    ...worst.ringing.map(({ volts, minVolts }) => CHECKS.ringing.spare(volts, minVolts)),
    ...worst.voice.map(({ lossDb, maxDb }) => CHECKS.voice.spare(lossDb, maxDb)),
  ]
  return Math.min(...rows)
}

const circuitIn = (plan: Plan) => reportPlan(plan).circuits.find(({ id }) => id === C)!

describe('the best place', () => {
  test('for the feed of a long line is as good as the best of a hundred places by the report itself', () => {
    const plan = longLine('common-1-ren', 'feed-48')
    const thing: Thing = { kind: 'supply', type: 'feed-48' }
    const [best] = bestPlaces(plan, C, thing, undefined)
    const measured = measurePlan(plan)
    const [line] = [...plan.lines.values()]
    const lineM = measured.get(line!.id)!.groundM
    const scoreOf = (spot: Spot) => {
      const found = circuitIn(putThing(plan, C, thing, spot, IDS))
      return { rank: RANK[found.worst.verdict] * 10 + RANK[found.verdict], least: leastAtWorst(found) }
    }
    const all = Array.from({ length: 100 }, (_, k): Spot => {
      const { legIndex, position } = pointAtGroundM(
        plan,
        measured.get(line!.id)!,
        line!,
        (lineM * (k + 0.5)) / 100,
      )
      return { kind: 'wire', line: line!.id, leg: legIndex, position }
    }).map(scoreOf)
    const own = scoreOf(best!.spot)
    const mostRank = Math.max(...all.map(({ rank }) => rank))
    const most = Math.max(...all.filter(({ rank }) => rank === mostRank).map(({ least }) => least))
    expect(own.rank).toBe(mostRank)
    // Places were closed in on to a sixty-fourth of the line, where the margin still falls by about a hundredth.
    expect(own.least).toBeGreaterThan(most - 0.03)
    // In the middle both telephones have the same wire to the feed.
    expect(best!.groundM! / lineM).toBeGreaterThan(0.4)
    expect(best!.groundM! / lineM).toBeLessThan(0.6)
    expect(own.least).toBeGreaterThan(leastAtWorst(circuitIn(plan)))
    expect(best!.worstMarginPct).toBeCloseTo((Math.exp(own.least) - 1) * 100, 6)
  })

  test('to tap a line for one station more is told as the report has it', () => {
    const oak = 'oak' as StationId
    const plan = addStation(longLine('common-1-ren', 'feed-48'), {
      id: oak,
      name: 'Oak',
      position: at([2100, -300]),
    })
    const thing: Thing = { kind: 'tap', to: oak, set: 'common-1-ren', wire: 'bell-wire-0-2' }
    const found = bestPlaces(plan, C, thing, undefined)
    expect(found.length).toBeGreaterThanOrEqual(2)
    for (const { spot, verdict, worst, worstMarginPct, extraM } of found) {
      const put = putThing(plan, C, thing, spot, IDS)
      const report = circuitIn(put)
      expect([report.verdict, report.worst.verdict]).toEqual([verdict, worst])
      expect(worstMarginPct).toBeCloseTo((Math.exp(leastAtWorst(report)) - 1) * 100, 6)
      const wireM = (own: Plan) => [...measurePlan(own).values()].reduce((sum, each) => sum + each.wireM, 0)
      expect(extraM).toBeCloseTo(wireM(put) - wireM(plan), 6)
      expect(put.circuits.get(C)!.sets.get(oak)).toBe('common-1-ren')
    }
  })
})
