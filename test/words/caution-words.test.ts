import { describe, expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { HAZARD_KINDS } from '../../src/plan/hazard-schema'
import { LAYS } from '../../src/plan/lays'
import type { HazardKind, Lay, Leg } from '../../src/plan/plan'
import { reportPlan } from '../../src/report/report-plan'
import { lineStops } from '../../src/sheet/line-stops'
import { cautionText } from '../../src/words/caution-words'
import { tongueOf } from '../../src/words/tongue'
import type { UnitSystem } from '../../src/words/units'
import { demoPlan, sourceOf } from '../sheet/demo-source'
import { planOf } from '../terrain/made-plan'

const TRUE_NORTH = { word: 'true', of: (deg: number) => deg } as const

/** All that is told of a line 600 m east that meets a hazard 315 m out, half-way between two supports. */
function told(kind: HazardKind, lay: Lay, system: UnitSystem, leg: Partial<Leg> = {}, stock = 0) {
  const { plan, line } = planOf(
    [[0, 0], [600, 0]],
    [lay],
    [{ kind, path: [[315, 400], [315, -400]] }],
  ) // biome-ignore format: one line a list
  const laid = { ...line, wire: BUILT_IN.wires[0]!.id, legs: [{ lay, ...leg }] }
  const whole = {
    ...plan,
    wireTempC: 49,
    lines: new Map([[laid.id, laid]]),
    stock: stock > 0 ? [{ wire: laid.wire, lengthM: stock, count: 1 }] : [],
  }
  const report = reportPlan(whole)
  const say = tongueOf(whole, system)
  return [
    ...report.cautions.map((caution) => cautionText(caution, say)),
    ...lineStops({ ...sourceOf(whole), system }, laid, report.lines[0]!, TRUE_NORTH).flatMap(
      ({ does }) => does,
    ),
  ]
}

describe('a caution', () => {
  const low = { supportM: 6, spanM: 30.1, sagPct: 2 }

  // US Army Signal subcourse SS0440, p. 1-25: 18 ft over a primary road, which is 5.49 m.
  test('gives the handbook’s figure in the units of the person, and in no others', () => {
    const metric = told('road', 'overhead', 'metric', low)
    expect(metric).toContainEqual(
      'Ash – Birch meets road 0 315 m out and hangs 5.4 m over it on a hot day; it must clear 5.5 m. Supports of 6.1 m would do, or a shorter span. The local code governs.',
    )
    expect(told('road', 'overhead', 'us', low)).toContainEqual(
      expect.stringContaining('must clear 18 ft. Supports of 20 ft would do'),
    )
  })

  // SS0440, p. 1-27: 6 to 12 inches deep and 3 feet past each edge; SS0444, p. 2-4: a foot or two outside the rails.
  test('says how deep, how far past and how far outside', () => {
    expect(told('road', 'surface', 'metric')).toContainEqual(
      expect.stringContaining('bury it 15 to 30 cm deep and 1 m past each edge'),
    )
    expect(told('road', 'surface', 'us')).toContainEqual(
      expect.stringContaining('bury it 6 to 12 in deep and 3 ft past each edge'),
    )
    expect(told('railway', 'buried', 'us')).toContainEqual(
      expect.stringContaining('staked 1 to 2 ft outside'),
    )
  })

  // California GO 95, rule 113.4: 170 lb and 150 ft.
  test('says what wire over rails must bear', () => {
    expect(told('railway', 'overhead', 'us').join()).toMatch(/bears less than 170 lbf|not be over 149.9 ft/)
    expect(told('railway', 'overhead', 'metric').join()).toMatch(/bears less than 756 N|not be over 45.7 m/)
  })

  test('of a stock too short tells no less than is missing', () => {
    const wireM = 600 * 1.2 + 16
    const [text] = told('road', 'buried', 'metric', { slackPct: 20 }, 400).filter((each) =>
      each.startsWith('The stock'),
    )
    const missingM = Number(/is (\d+) m too short to lay Ash – Birch whole/.exec(text!)![1])
    expect(missingM).toBeGreaterThanOrEqual(wireM - 400)
  })

  test.each(HAZARD_KINDS.flatMap((kind) => LAYS.map((lay) => [kind, lay] as const)))(
    'about a %s met %s mixes no units',
    (kind, lay) => {
      for (const leg of [{}, low, { supportM: 3, sagPct: 0.02 }]) {
        const [metric, us] = (['metric', 'us'] as const).map((system) => told(kind, lay, system, leg, 400))
        for (const text of metric!) expect(text).not.toMatch(/\d (ft|in|mi|lbf|lb|°F)\b/)
        for (const text of us!) expect(text).not.toMatch(/\d (m|cm|km|N|kg|°C)\b/)
        expect(us).toHaveLength(metric!.length)
        // No figure was forgotten, and no id stands for a name.
        for (const text of [...metric!, ...us!]) expect(text).not.toMatch(/undefined|NaN|null|\bh0\b/)
      }
    },
  )

  test('of the demo mixes none either', () => {
    const plan = demoPlan()
    for (const caution of reportPlan(plan).cautions)
      expect(cautionText(caution, tongueOf(plan, 'us'))).not.toMatch(/\d (m|cm|km|N|kg|°C)\b/)
  })
})
