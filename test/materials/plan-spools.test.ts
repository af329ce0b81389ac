import { describe, expect, test } from 'vitest'
import type { Catalog } from '../../src/catalog/catalog'
import type { Wire } from '../../src/catalog/wire'
import { planSpools } from '../../src/materials/plan-spools'
import type { MeasuredLine } from '../../src/measure/measured'
import type { LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Line, type Plan, type Stock } from '../../src/plan/plan'
import { METRES_PER_MILE } from '../../src/units'

const wire = (spoolsM: readonly number[]): Wire => ({
  id: 'w',
  name: 'test pair',
  loopOhmPerKm: 130,
  tempCoeffPerC: 0.0039,
  nanoFPerKm: 60,
  loopMilliHPerKm: 0.7,
  dryMicroSPerKm: 1,
  wetMicroSPerKm: 50,
  kgPerKm: 13.5,
  breakN: 890,
  spoolsM,
  source: 'invented',
})

interface Case {
  readonly wireM: readonly number[]
  readonly spoolsM?: readonly number[]
  readonly stock?: readonly Omit<Stock, 'wire'>[]
  readonly pairs?: number
  readonly wasteM?: number
  readonly reservePct?: number
}

/** Lines of given lengths of wire, all on the same wire. */
function spoolsFor({ wireM, spoolsM = [], stock = [], pairs = 1, wasteM = 0.5, reservePct = 0 }: Case) {
  const lines = wireM.map(
    (_, i): Line => ({
      id: `l${i}` as LineId,
      from: 'a' as StationId,
      to: 'b' as StationId,
      bends: [],
      legs: [{ lay: 'surface' }],
      wire: 'w',
      pairs,
      return: 'pair',
    }),
  )
  const plan: Plan = {
    ...EMPTY_PLAN,
    allowances: { ...EMPTY_PLAN.allowances, spliceWasteM: wasteM, reservePct },
    stock: stock.map((spool) => ({ wire: 'w', ...spool })),
    stations: new Map(
      (['a', 'b'] as StationId[]).map((id, i) => [
        id,
        { id, name: id, note: '', position: [10, 55 + i / 100] },
      ]),
    ),
    lines: new Map(lines.map((line) => [line.id, line])),
  }
  const measured = new Map(
    lines.map((line, i): [LineId, MeasuredLine] => [
      line.id,
      { id: line.id, mapM: wireM[i]!, groundM: wireM[i]!, laidM: wireM[i]!, wireM: wireM[i]!, legs: [] },
    ]),
  )
  const catalog: Catalog = { wires: new Map([['w', wire(spoolsM)]]), sets: new Map(), supplies: new Map() }
  const { spools, pieces } = planSpools(plan, catalog, measured)
  return { ...spools[0]!, pieces: [...pieces.values()] }
}

describe('a route of 3.7 km on the surface', () => {
  // Reels made up in 1 mile and 1/2 mile: US Army subcourse SS0440, table 1-1. 20 % of slack: subcourse SS0444, p. 2-2 par. 3.
  // 3.7 km · 1.2 = 4.44 km = 2.76 miles.
  const wireM = [3700 * 1.2]
  test('takes 3 one-mile reels and 2 splices', () => {
    const plan = spoolsFor({ wireM, spoolsM: [METRES_PER_MILE] })
    expect(plan.used).toHaveLength(3)
    expect(plan.splices).toBe(2)
    expect(plan.carry).toEqual([{ lengthM: METRES_PER_MILE, count: 3 }])
    expect(plan.kg).toBeCloseTo(3 * 1.609344 * 13.5, 6)
  })
  test('takes 6 half-mile dispensers and 5 splices', () => {
    const plan = spoolsFor({ wireM, spoolsM: [METRES_PER_MILE / 2] })
    expect(plan.used).toHaveLength(6)
    expect(plan.splices).toBe(5)
  })
})

test('a spool is cut to serve several lines', () => {
  const plan = spoolsFor({ wireM: [150, 120, 100], spoolsM: [400] })
  expect(plan.used).toEqual([{ spool: 's1', lengthM: 400, leftM: 30 }])
  expect(plan.splices).toBe(0)
  expect(plan.pieces.map((pieces) => pieces.map((piece) => piece.spool))).toEqual([['s1'], ['s1'], ['s1']])
})

test('of the standard spools the shortest are taken that cost no splice and no further spool', () => {
  const plan = spoolsFor({ wireM: [300, 90], spoolsM: [400, 800, 1600] })
  expect(plan.used.map((spool) => spool.lengthM)).toEqual([400])
  const longer = spoolsFor({ wireM: [1700], spoolsM: [400, 800, 1600] })
  expect(longer.used.map((spool) => spool.lengthM).sort()).toEqual([1600, 400])
})

test('each pair of a line is laid', () => {
  const plan = spoolsFor({ wireM: [300], spoolsM: [400], pairs: 2 })
  expect(plan.pieces[0]!.map(({ pair, wireM }) => [pair, wireM])).toEqual([
    [0, 300],
    [1, 300],
  ])
})

test('a splice takes half of its waste off either piece', () => {
  const plan = spoolsFor({ wireM: [700], spoolsM: [400], wasteM: 2 })
  expect(plan.splices).toBe(1)
  expect(plan.pieces[0]!.map(({ wireM, cutM }) => cutM - wireM)).toEqual([1, 1])
  expect(plan.leftM).toBeCloseTo(800 - 702, 6)
})

test('the reserve is carried in spools besides those used', () => {
  const plan = spoolsFor({ wireM: [390], spoolsM: [400, 1600], reservePct: 10 })
  expect(plan.neededM).toBeCloseTo(429, 9)
  expect(plan.used).toHaveLength(1)
  expect(plan.carry).toEqual([{ lengthM: 400, count: 2 }])
})

describe('a stock that is too short', () => {
  test('says how much is missing, lays the shortest lines whole, and names the others', () => {
    const plan = spoolsFor({ wireM: [900, 200, 150], stock: [{ lengthM: 400, count: 2 }] })
    // 1250 m, less the two spools of 400 m spliced into one.
    expect(plan.missingM).toBeCloseTo(1250 - (800 - 0.5), 6)
    expect(plan.notLaid).toEqual(['l0'])
    expect(plan.pieces[1]!.map((piece) => piece.wireM)).toEqual([200])
    expect(plan.pieces[2]!.map((piece) => piece.wireM)).toEqual([150])
    // The spool that nobody has touched begins the long line.
    expect(plan.pieces[0]!.map((piece) => piece.wireM)).toEqual([400])
  })
  test('of other wires only has none of this one', () => {
    const plan = spoolsFor({ wireM: [100], spoolsM: [400], stock: [{ lengthM: 400, count: 0 }] })
    expect(plan.missingM).toBeCloseTo(100, 9)
    expect(plan.pieces[0]).toEqual([])
  })
})

test('a line that would take millions of spools is told as not laid, at once', () => {
  const plan = spoolsFor({ wireM: [2e7, 300], spoolsM: [1, 2] })
  expect(plan.notLaid).toEqual(['l0'])
  expect(plan.pieces[1]!.reduce((sum, piece) => sum + piece.wireM, 0)).toBeCloseTo(300, 6)
})

test('what is needed has the reserve on the wire and the waste of every splice besides', () => {
  // 1,000 m in three spools of 400 m: two splices of 0.5 m each, and 10 % of the wire.
  const plan = spoolsFor({ wireM: [1000], spoolsM: [400], reservePct: 10, wasteM: 0.5 })
  expect(plan.splices).toBe(2)
  expect(plan.neededM).toBeCloseTo(1000 * 1.1 + 2 * 0.5, 9)
})

test('two pairs of one line are two runs: each that is longer than a spool has its own splice', () => {
  const plan = spoolsFor({ wireM: [700], spoolsM: [400], pairs: 2 })
  // 2 pairs · 700 m · 1.1 and half a metre for each of two splices.
  const withReserve = spoolsFor({ wireM: [700], spoolsM: [400], pairs: 2, reservePct: 10 })
  expect(withReserve.neededM).toBeCloseTo(2 * 700 * 1.1 + 2 * 0.5, 9)
  expect(plan.splices).toBe(2)
  expect(spoolsFor({ wireM: [300], spoolsM: [400], pairs: 2 }).splices).toBe(0)
})

test('where the stock is short, each of two joined pieces gives half of the splice’s waste', () => {
  // 900 m from spools of 400 m, two of them there: 400 − ½ m, then the rest of the second as far as it goes.
  const plan = spoolsFor({ wireM: [900], stock: [{ lengthM: 400, count: 2 }], wasteM: 1 })
  expect(plan.pieces[0]!.map(({ wireM, cutM }) => [wireM, cutM])).toEqual([
    [399.5, 400],
    [399.5, 400],
  ])
  expect(plan.missingM).toBeGreaterThan(100)
})
