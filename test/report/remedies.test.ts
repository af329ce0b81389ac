import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { measurePlan } from '../../src/measure/measure-line'
import type { Plan } from '../../src/plan/plan'
import { isAmiss } from '../../src/report/is-amiss'
import { remediesFor } from '../../src/report/remedies'
import { applyChanges } from '../../src/report/remedy-changes'
import { sparePct } from '../../src/report/remedy-ranking'
import { reportPlan } from '../../src/report/report-plan'
import { todaysCases } from '../cases'
import { randomPlan, SUPPLY_KINDS } from '../simulator/random-plan'

function planFrom(text: string): Plan {
  const result = parsePlan(text)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

/** Applies every remedy of every circuit of a plan, reckons the mended plan anew, and holds it to what was promised. */
function remediesKept(plan: Plan): number {
  let count = 0
  for (const circuit of reportPlan(plan).circuits) {
    const remedies = remediesFor(plan, circuit.id, measurePlan(plan))
    if (!isAmiss(circuit)) expect(remedies).toEqual([])
    for (const { changes, verdict, worst } of remedies) {
      const what = JSON.stringify(changes)
      // Through the file and back, so that a remedy is known to leave a plan that can be kept.
      const mended = planFrom(formatPlan(applyChanges(plan, circuit.id, changes)))
      const parts = reportPlan(mended).circuits.filter(
        ({ id }) => id === circuit.id || !plan.circuits.has(id),
      )
      expect(verdict, what).toBe('works')
      expect(
        parts.map((part) => part.verdict),
        what,
      ).toEqual(parts.map(() => 'works'))
      expect(
        parts.map((part) => part.worst.verdict),
        what,
      ).toContain(worst)
      count++
    }
  }
  return count
}

test('the demo has a circuit that fails in the worst weather, and at least three remedies that mend it', () => {
  const demo = planFrom(readFileSync('public/demo.plan.geojson', 'utf8'))
  const failing = reportPlan(demo).circuits.filter(({ worst }) => worst.verdict === 'fails')
  expect(failing.length).toBeGreaterThan(0)
  expect(remediesFor(demo, failing[0]!.id, measurePlan(demo)).length).toBeGreaterThanOrEqual(3)
  expect(remediesKept(demo)).toBeGreaterThanOrEqual(3)
})

test('what a remedy leaves to spare is a number in JSON, however great or small the margin', () => {
  expect(sparePct(Math.log(1.25))).toBeCloseTo(25, 9)
  for (const nepers of [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NaN, 800, -800, 23]) {
    const pct = JSON.parse(JSON.stringify(sparePct(nepers)))
    expect(pct).toBeGreaterThanOrEqual(-100)
    expect(pct).toBeLessThan(99_901)
  }
})

test('sets that ask for next to nothing leave remedies with margins that are numbers', () => {
  const file = JSON.parse(readFileSync('public/demo.plan.geojson', 'utf8'))
  const used = new Set(file.plan.circuits.flatMap(({ sets }: { sets: object }) => Object.values(sets)))
  const own = BUILT_IN.sets.filter(({ id }) => used.has(id))
  const sets = own.map((set) => ({
    ...set,
    maxLossDb: 200,
    ...(set.ringer && { ringer: { ...set.ringer, minVolts: 0 } }),
  }))
  file.plan.catalog = { ...file.plan.catalog, sets }
  let count = 0
  const plan = planFrom(JSON.stringify(file))
  for (const { id } of reportPlan(plan).circuits) {
    for (const remedy of remediesFor(plan, id, measurePlan(plan))) {
      const { marginPct, worstMarginPct } = JSON.parse(JSON.stringify(remedy))
      for (const pct of [marginPct, worstMarginPct]) {
        expect(typeof pct).toBe('number')
        expect(pct).toBeLessThan(99_901)
      }
      count++
    }
  }
  expect(count).toBeGreaterThan(0)
})

test.each(SUPPLY_KINDS)(
  'every remedy listed for a random circuit with %s as supply keeps its word',
  { timeout: 120_000 },
  (kind) => {
    let kept = 0
    for (const seed of todaysCases(7, 4))
      kept += remediesKept(planFrom(JSON.stringify(randomPlan(500 + seed, kind, 'tree'))))
    expect(kept).toBeGreaterThan(0)
  },
)

test('no remedy leaves another circuit on the same lines worse than it was', { timeout: 120_000 }, () => {
  const rank = { fails: 0, thin: 1, works: 2 }
  let compared = 0
  for (const seed of todaysCases(16, 4)) {
    const file = randomPlan(700 + seed, 'none', 'tree')
    const [net] = file.plan.circuits
    file.plan.circuits = [
      net,
      {
        ...net,
        id: 'c2',
        name: 'Second net',
        sets: Object.fromEntries(Object.entries(net.sets).slice(0, 2)),
      },
    ]
    for (const { properties } of file.features) if (properties.kind === 'line') properties.pairs = 2
    const plan = planFrom(JSON.stringify(file))
    const [first, before] = reportPlan(plan).circuits
    for (const { changes } of remediesFor(plan, first!.id, measurePlan(plan))) {
      const what = JSON.stringify(changes)
      const after = reportPlan(applyChanges(plan, first!.id, changes)).circuits.find(
        ({ id }) => id === before!.id,
      )!
      expect(rank[after.verdict], what).toBeGreaterThanOrEqual(rank[before!.verdict])
      expect(rank[after.worst.verdict], what).toBeGreaterThanOrEqual(rank[before!.worst.verdict])
      compared++
    }
  }
  expect(compared).toBeGreaterThan(0)
})
