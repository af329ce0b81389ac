import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { CLUSTER_M, cutGroup } from '../../src/materials/cut-runs'
import { packSpools } from '../../src/materials/pack-spools'
import type { Group } from '../../src/materials/packing'

const WASTE_M = 0.6
const plain = (needsM: readonly number[]) => needsM.map((needM) => ({ needM, avoid: [] }))

function packed(needsM: readonly number[], spoolsM: readonly number[], count = 1) {
  const runs = plain(needsM)
  const cut = (group: Group) => cutGroup(runs, group.runs, group.spoolsM, WASTE_M)
  const kinds = spoolsM.map((lengthM) => ({ lengthM, count }))
  return { runs, packing: packSpools({ needsM, kinds, wasteM: WASTE_M, cut }) }
}

const lengths = (min: number, max: number, most: number) =>
  fc.array(
    fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10),
    { minLength: 1, maxLength: most },
  )

describe('whatever the lines and the stock', () => {
  test('pieces cover their runs, spools are never overdrawn, and splices take their waste', () => {
    fc.assert(
      fc.property(lengths(5, 3000, 8), lengths(50, 2000, 12), (needsM, spoolsM) => {
        const { runs, packing } = packed(needsM, spoolsM)
        if (!packing) return
        let splices = 0
        for (const group of packing.groups) {
          const { cuts, leftM } = cutGroup(runs, group.runs, group.spoolsM, WASTE_M)!
          for (const run of group.runs) {
            const own = cuts.filter((cut) => cut.run === run)
            expect(own.reduce((sum, cut) => sum + cut.wireM, 0)).toBeCloseTo(needsM[run]!, 6)
            const cutM = own.reduce((sum, cut) => sum + cut.cutM, 0)
            expect(cutM).toBeCloseTo(needsM[run]! + WASTE_M * (own.length - 1), 6)
            for (const cut of own) expect(cut.wireM).toBeGreaterThan(0)
            splices += own.length - 1
          }
          for (const [spool, lengthM] of group.spoolsM.entries()) {
            const taken = cuts.filter((cut) => cut.spool === spool).reduce((sum, cut) => sum + cut.cutM, 0)
            expect(taken + leftM[spool]!).toBeCloseTo(lengthM, 6)
            expect(leftM[spool]!).toBeGreaterThanOrEqual(0)
          }
        }
        expect(splices).toBeLessThanOrEqual(packing.cost.splices)
        expect(packing.groups.flatMap((group) => group.runs).sort()).toEqual(
          needsM.map((_, run) => run).sort(),
        )
      }),
      { numRuns: 200, seed: 5 },
    )
  })

  test('no plan of longer runs needs fewer splices', () => {
    fc.assert(
      fc.property(lengths(5, 3000, 6), fc.double({ min: 1, max: 1.5, noNaN: true }), (needsM, factor) => {
        const now = packed(needsM, [400, 1600], Number.POSITIVE_INFINITY).packing!
        const longer = packed(
          needsM.map((needM) => needM * factor),
          [400, 1600],
          Number.POSITIVE_INFINITY,
        ).packing!
        return longer.cost.splices >= now.cost.splices
      }),
      { numRuns: 100, seed: 6 },
    )
  })
})

test('the same lines get the same spools every time', () => {
  const needsM = Array.from({ length: 40 }, (_, i) => 100 + ((i * 7919) % 2300))
  const one = packed(needsM, [400, 800, 1600], 60).packing
  expect(packed(needsM, [400, 800, 1600], 60).packing).toEqual(one)
})

test('a thousand lines are planned from standard spools and from a stock', { timeout: 20_000 }, () => {
  const needsM = Array.from({ length: 1000 }, (_, i) => 100 + ((i * 7919) % 2900))
  const atWill = packed(needsM, [402, 805, 1609, 4023], Number.POSITIVE_INFINITY).packing!
  expect(atWill.cost.splices).toBe(atWill.bound.splices)
  expect(atWill.cost.spools / atWill.bound.spools).toBeLessThan(1.02)
  const stock = packed(needsM, [400, 800, 1600], 1200).packing!
  expect(stock.cost.splices).toBeGreaterThanOrEqual(stock.bound.splices)
})

describe('a splice', () => {
  const at = (avoid: { fromM: number; toM: number }[], spoolsM: readonly number[], needM = 1000) =>
    cutGroup([{ needM, avoid }], [0], spoolsM, 0)!

  test('falls where the first spool ends', () => {
    expect(at([], [600, 600]).cuts[0]!.wireM).toBe(600)
  })
  test('is drawn back out of a span by wire to spare', () => {
    const cut = at([{ fromM: 550, toM: 650 }], [600, 600])
    expect(cut.cuts.map((piece) => piece.wireM)).toEqual([550, 450])
    expect(cut.clashes).toBe(0)
  })
  test('is kept out of a span by laying the spools in another order', () => {
    //  700 + 300 would splice inside 650…720; 300 + 700 does not.
    const cut = at([{ fromM: 650, toM: 720 }], [700, 300])
    expect(cut.cuts.map((piece) => piece.wireM)).toEqual([300, 700])
    expect(cut.clashes).toBe(0)
  })
  test('that cannot be helped is counted', () => {
    expect(at([{ fromM: 0, toM: 1000 }], [700, 300]).clashes).toBe(1)
  })
  test('leaves no piece shorter than a cluster where there is wire to spare', () => {
    const cut = at([], [998, 50])
    expect(Math.min(...cut.cuts.map((piece) => piece.wireM))).toBeGreaterThanOrEqual(CLUSTER_M - 1e-9)
  })
})
