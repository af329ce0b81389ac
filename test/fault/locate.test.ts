import { describe, expect, test } from 'vitest'
import type { Known } from '../../src/fault/evidence'
import { type FaultFound, locateFault } from '../../src/fault/locate'
import { measurePlan } from '../../src/measure/measure-line'
import { circuitNetwork } from '../../src/report/circuit-network'
import { laidCatalog } from '../../src/report/learned-of'
import { METRES_PER_MILE } from '../../src/units'
import { fieldPlan, TEST_WIRE, type TestLine } from '../field/field-plan'

function found(
  lines: readonly TestLine[],
  evidence: readonly object[],
  wanted: Parameters<typeof fieldPlan>[1] = {},
): FaultFound {
  const plan = fieldPlan(lines, wanted)
  const measured = measurePlan(plan)
  const circuit = plan.circuits.values().next().value!
  const model = circuitNetwork(plan, circuit, laidCatalog(plan, measured), measured)
  return locateFault(plan, model, evidence as readonly Known[])
}

const chanceOf = ({ kinds }: FaultFound, kind: string) => kinds.find((each) => each.kind === kind)!.chance
const middleOf = ({ band }: FaultFound) => (band!.fromM + band!.toM) / 2

describe('bridges', () => {
  // Hawkins Electrical Guide, vol. 3 (1914), fig. 597: a loop of 54.07 Ω, one wire of 16.46 Ω per mile, 332 of 1000: 1.09 miles.
  const loopOhmPerKm = (2 * 16.46 * 1000) / METRES_PER_MILE
  const line = { id: 'l1', from: 'a', to: 'b', wireM: (54.07 / loopOhmPerKm) * 1000 }
  const wires = [{ ...TEST_WIRE, loopOhmPerKm, spread: { loopOhmPerKm: 8 } }]
  const at = { at: 'a', toward: 'b', meterPct: 0.5, tempC: 20 }
  test.each([
    ['Murray', { murray: [332, 668] }],
    // The same fault by a bridge of equal arms: 54.07 − 2 · 17.95 Ω.
    ['Varley', { varley: 18.17, loopOhms: 54.07 }],
  ])('of %s find the fault of the worked example, in a band that is not nothing', (_, bridge) => {
    const answer = found([line], [{ ...at, ...bridge }], { wires })
    expect(middleOf(answer) / METRES_PER_MILE).toBeCloseTo(1.09, 2)
    const width = answer.band!.toM - answer.band!.fromM
    expect(width).toBeGreaterThan(10)
    expect(width).toBeLessThan(60)
    expect(chanceOf(answer, 'short') + chanceOf(answer, 'leak')).toBeGreaterThan(0.98)
  })
  test('of Murray: arms of 1 to 3 on 500 m of cable find the fault in the middle', () => {
    // V. K. Mehta, Principles of Power System, Murray example (from memory).
    const cable = [{ ...TEST_WIRE, loopOhmPerKm: 3.2 }]
    const answer = found([{ ...line, wireM: 500 }], [{ ...at, murray: [1, 3] }], { wires: cable })
    expect(middleOf(answer)).toBeCloseTo(250, 0)
  })
  test('do not balance over a break', () => {
    const answer = found([line], [{ ...at, murray: [332, 668] }], { wires })
    expect(chanceOf(answer, 'open')).toBeLessThan(0.01)
  })
})

// a ── 3 km ── b ── 2 km ── c, a telephone at each
const ROW = [
  { id: 'l1', from: 'a', to: 'b', wireM: 3000 },
  { id: 'l2', from: 'b', to: 'c', wireM: 2000 },
]
const SETS = {
  sets: { a: 'crank-1600', b: 'crank-1600', c: 'crank-1600' },
  wires: [{ ...TEST_WIRE, spread: { loopOhmPerKm: 8, nanoFPerKm: 15 } }],
}

describe('without a meter', () => {
  test('a crank that turns light, and nobody heard beyond b, is a break there', () => {
    const answer = found(
      ROW,
      [
        { rings: ['a', 'b'], ok: true },
        { hears: ['a', 'b'], ok: true },
        { rings: ['a', 'c'], ok: false },
        { hears: ['a', 'c'], ok: false },
      ],
      SETS,
    )
    expect(answer.kinds[0]!.kind).toBe('open')
    expect(answer.places[0]).toMatchObject({ line: 'l2' })
    expect(answer.places[0]!.chance).toBeGreaterThan(0.9)
  })
  test('a crank that turns heavy is a short', () => {
    const answer = found(
      ROW,
      [
        { crank: 'heavy', at: 'a' },
        { rings: ['a', 'b'], ok: false },
      ],
      SETS,
    )
    expect(chanceOf(answer, 'short')).toBeGreaterThan(0.6)
    expect(chanceOf(answer, 'open')).toBeLessThan(0.1)
  })
  test('what was found sound is out of the question', () => {
    const answer = found(ROW, [{ sound: { line: 'l1', fromM: 0, toM: 3000 } }], SETS)
    expect(answer.band).toMatchObject({ line: 'l2' })
  })
  test('nothing known is nothing told', () => {
    const answer = found(ROW, [], SETS)
    expect(answer.band).toBeNull()
    expect(answer.places.map(({ chance }) => chance).reduce((a, b) => a + b)).toBeGreaterThan(0.98)
  })
})

describe('several readings', () => {
  const loop = { far: 'open', what: 'loopOhms', meterPct: 1, tempC: 20 }
  test('from both ends leave the lot of wire out of it', () => {
    // 1800 m from a at 136 Ω/km: 244.8 Ω and 2 Ω of the short; from c 435.2 Ω and 2 Ω.
    const answer = found(
      ROW,
      [
        { ...loop, at: 'a', toward: 'c', value: 246.8 },
        { ...loop, at: 'c', toward: 'a', value: 437.2 },
      ],
      { wires: SETS.wires },
    )
    expect(answer.kinds[0]!.kind).toBe('short')
    expect(answer.band!.fromM).toBeLessThan(1800)
    expect(answer.band!.toM).toBeGreaterThan(1800)
    expect(answer.band!.toM - answer.band!.fromM).toBeLessThan(80)
  })
  test('that no single fault brings about are told as more than one', () => {
    const answer = found(
      ROW,
      [
        { ...loop, at: 'a', toward: 'c', value: 130 },
        { ...loop, at: 'a', toward: 'c', value: 300 },
      ],
      SETS,
    )
    expect(answer.several).toBeGreaterThan(0.9)
  })
  test('of a sound line tell that perhaps nothing is wrong: a slight leak or joint would not show', () => {
    const answer = found(
      ROW,
      [
        { ...loop, far: 'short', at: 'a', toward: 'c', value: 652 },
        { far: 'open', what: 'nanoF', at: 'a', toward: 'c', value: 301, meterPct: 1, weather: 'dry' },
        { rings: ['a', 'c'], ok: true },
        { rings: ['c', 'b'], ok: true },
      ],
      SETS,
    )
    expect(answer.nothingWrong).toBeGreaterThan(0.1)
  })
  test('read wet on a plan that is set dry are taken for wet', () => {
    // 75 nF/km wet: a break 2 km out.
    const answer = found(
      ROW,
      [{ far: 'open', what: 'nanoF', at: 'a', toward: 'c', value: 150, meterPct: 1, weather: 'wet' }],
      SETS,
    )
    expect(answer.band!.fromM).toBeLessThan(2000)
    expect(answer.band!.toM).toBeGreaterThan(2000)
  })
})
