import { describe, expect, test } from 'vitest'
import type { CircuitModel } from '../../src/budget/circuit-model'
import { circuitRows } from '../../src/budget/circuit-rows'
import { conditionsOf } from '../../src/budget/conditions'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { reportPlan } from '../../src/report/report-plan'
import { QUARRY_TEXT } from '../files/quarry-net'
import { builtInSet, builtInWire } from '../reference/built-in-entry'
import { OHMS_ONLY, rowOfSets } from '../reference/test-circuit'

const crank = builtInSet('crank-1600')
const ringVolts = (model: CircuitModel, weather: 'dry' | 'wet') =>
  circuitRows(model, conditionsOf(weather, 20)).ringing[0]!.volts
const worn = (model: CircuitModel): CircuitModel => ({
  ...model,
  lines: model.lines.map((line) => ({ ...line, worn: true })),
})

describe('worn wire', () => {
  const wire = { ...builtInWire('wd-1a'), wornMicroSPerKm: 250 }
  test('leaks its own figure when wet and ten times as much as new when dry', () => {
    const asWorn = { ...wire, wetMicroSPerKm: 250, dryMicroSPerKm: 10 * wire.dryMicroSPerKm }
    const [old, likeIt] = [
      worn(rowOfSets([crank, crank], wire, 10_000)),
      rowOfSets([crank, crank], asWorn, 10_000),
    ]
    for (const weather of ['dry', 'wet'] as const)
      expect(ringVolts(old, weather)).toBeCloseTo(ringVolts(likeIt, weather), 9)
  })
  test('rings a far bell with far less', () => {
    // 10 km wet, 16 V needed: 55.5 V at the bell at 25 µS/km and 14.7 at 250, as an attack on the program's figures reckoned apart from it.
    // The leakage alone was varied there, so the ratio is held, to 10 %.
    const at = (wetMicroSPerKm: number) =>
      ringVolts(rowOfSets([crank, crank], { ...wire, wetMicroSPerKm }, 10_000), 'wet')
    expect(Math.abs(at(250) / at(25) / (14.7 / 55.5) - 1)).toBeLessThan(0.1)
  })
  test('of an unknown leakage is reckoned as new when wet', () => {
    const { wornMicroSPerKm: _, ...unknown } = wire
    const model = rowOfSets([crank, crank], unknown, 10_000)
    expect(ringVolts(worn(model), 'wet')).toBe(ringVolts(model, 'wet'))
  })
})

test('ten splices of 5 Ω in each wire are 100 Ω of loop', () => {
  const plain = rowOfSets([crank, crank], OHMS_ONLY, 1000)
  const perKm = { ohmPerKm: 10 * 2 * 5, wetSiemensPerKm: 0 }
  const spliced = { ...plain, lines: plain.lines.map((line) => ({ ...line, splices: perKm })) }
  const longer = rowOfSets([crank, crank], OHMS_ONLY, 1100)
  expect(ringVolts(spliced, 'dry')).toBeCloseTo(ringVolts(longer, 'dry'), 6)
})

describe('a plan with worn lines and splices that count', () => {
  const file = JSON.parse(QUARRY_TEXT)
  const lines = file.features.filter(
    (each: { properties: { kind: string } }) => each.properties.kind === 'line',
  )
  for (const line of lines) line.properties.worn = true
  Object.assign(file.plan.allowances, { spliceOhms: 5, spliceMicroS: 20 })
  const read = parsePlan(JSON.stringify(file))
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  const plan = read.value
  test('is written as it was read', () => {
    const again = parsePlan(formatPlan(plan))
    expect(again).toMatchObject({ ok: true, value: { allowances: { spliceOhms: 5, spliceMicroS: 20 } } })
    expect([...plan.lines.values()].every((line) => line.worn)).toBe(true)
    expect(again.ok && formatPlan(again.value)).toBe(formatPlan(plan))
  })
  test('has each splice of a pair in its loop, once for each wire of it', () => {
    const { spliceOhms: _, ...plain } = plan.allowances
    const [spliced, bare] = [reportPlan(plan), reportPlan({ ...plan, allowances: plain })]
    for (const [k, line] of spliced.lines.entries()) {
      const own = plan.lines.get(line.id)!
      const ofPair = (pair: number) => line.pieces.filter((piece) => piece.pair === pair).length - 1
      const most = Math.max(0, ...Array.from({ length: own.pairs }, (_each, pair) => ofPair(pair)))
      const wires = own.return === 'earth' ? 1 : 2
      expect(line.loopOhms - bare.lines[k]!.loopOhms).toBeCloseTo(most * wires * 5, 6)
    }
    expect(spliced.lines.some((line, k) => line.loopOhms > bare.lines[k]!.loopOhms)).toBe(true)
  })
})

test('a mark that is neither true nor false is refused with its place', () => {
  const file = JSON.parse(QUARRY_TEXT)
  const k = file.features.findIndex(
    (each: { properties: { kind: string } }) => each.properties.kind === 'line',
  )
  file.features[k].properties.worn = 'yes'
  expect(parsePlan(JSON.stringify(file))).toMatchObject({
    ok: false,
    problems: [{ at: `features[${k}].properties.worn` }],
  })
})
