import loadHighs from 'highs'
import { beforeAll, expect, test } from 'vitest'
import { cutGroup } from '../../src/materials/cut-runs'
import { packSpools } from '../../src/materials/pack-spools'
import type { Group } from '../../src/materials/packing'
import type { SpoolKind } from '../../src/materials/spool-kinds'
import { todaysCases } from '../cases'
import { leastCost, type Solver } from './milp-oracle'

/** mulberry32, so that every run draws the same cases. */
function seeded(seed: number): () => number {
  let a = seed
  return () => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

const WASTE_M = 2
const GROUPS = todaysCases(12, 12)
/** Cases in a group. */
const GROUP = 5
const CASES = GROUPS.length * GROUP

function pack(needsM: readonly number[], kinds: readonly SpoolKind[]) {
  const runs = needsM.map((needM) => ({ needM, avoid: [] }))
  const cut = (group: Group) => cutGroup(runs, group.runs, group.spoolsM, WASTE_M)
  return packSpools({ needsM, kinds, wasteM: WASTE_M, cut })
}

let solver: Solver
beforeAll(async () => {
  solver = await loadHighs()
})

/** Cases whose optimum a mixed-integer solver finds: how many are met, and by how much the others are missed. */
function compare(
  draw: (random: () => number) => { needsM: number[]; kinds: SpoolKind[]; spoolsM: number[] },
  seed: number,
) {
  // Each group has random numbers of its own.
  const randoms = GROUPS.flatMap((group) => {
    const random = seeded(seed + 100 * group)
    return Array.from({ length: GROUP }, () => random)
  })
  const tally = { cases: 0, optimal: 0, proved: 0, splicesOver: 0, spoolsOver: 0, lengthOverM: 0 }
  while (tally.cases < CASES) {
    const { needsM, kinds, spoolsM } = draw(randoms[tally.cases]!)
    const truth = leastCost(solver, needsM, spoolsM, WASTE_M)
    const found = pack(needsM, kinds)
    expect(found === undefined, `both find that spools ${spoolsM} reach for ${needsM}, or neither`).toBe(
      truth === undefined,
    )
    if (!truth || !found) continue
    tally.cases++
    const { cost, bound } = found
    const over = [
      cost.splices - truth.splices,
      cost.spools - truth.spools,
      cost.lengthM - truth.lengthM,
    ] as const
    const first = over.find((x) => Math.abs(x) > 1e-3) ?? 0
    expect(first, `${needsM} from ${spoolsM}: nothing beats the optimum`).toBeGreaterThanOrEqual(0)
    const below = [truth.splices - bound.splices, truth.spools - bound.spools, truth.lengthM - bound.lengthM]
    expect(
      below.find((x) => Math.abs(x) > 1e-3) ?? 0,
      `${needsM} from ${spoolsM}: the bound holds`,
    ).toBeGreaterThanOrEqual(0)
    if (first === 0) tally.optimal++
    else if (over[0] > 0) tally.splicesOver = Math.max(tally.splicesOver, over[0])
    else if (over[1] > 0) tally.spoolsOver = Math.max(tally.spoolsOver, over[1])
    else tally.lengthOverM = Math.max(tally.lengthOverM, over[2])
    if (bound.splices === cost.splices && bound.spools === cost.spools && bound.lengthM === cost.lengthM)
      tally.proved++
  }
  return tally
}

test(`${CASES} random stocks of mixed lengths are shared out as the mixed-integer solver does`, {
  timeout: 120_000,
}, () => {
  const tally = compare((random) => {
    const spoolsM = Array.from(
      { length: 2 + Math.floor(random() * 4) },
      () => 50 + 10 * Math.floor(random() * 80),
    ).sort((a, b) => b - a)
    const needsM = Array.from({ length: 1 + Math.floor(random() * 4) }, () => 20 + Math.floor(random() * 600))
    return { needsM, spoolsM, kinds: spoolsM.map((lengthM) => ({ lengthM, count: 1 })) }
  }, 11)
  console.info('spools from a stock against HiGHS:', tally)
  expect(tally.optimal).toBeGreaterThanOrEqual(0.98 * CASES)
})

test(`${CASES} random plans on standard spools are laid as the mixed-integer solver does`, {
  timeout: 120_000,
}, () => {
  const tally = compare((random) => {
    const lengths = [400, 800, 1600].slice(0, 1 + Math.floor(random() * 3)).reverse()
    const longest = lengths[0]!
    const needsM = Array.from(
      { length: 1 + Math.floor(random() * 3) },
      () => 20 + Math.floor(random() * longest * 1.3),
    )
    const most = needsM.reduce((sum, needM) => sum + Math.ceil(needM / (longest - WASTE_M)), 0)
    return {
      needsM,
      spoolsM: lengths.flatMap((lengthM) => Array<number>(most).fill(lengthM)),
      kinds: lengths.map((lengthM) => ({ lengthM, count: Number.POSITIVE_INFINITY })),
    }
  }, 12)
  console.info('standard spools against HiGHS:', tally)
  expect(tally.optimal).toBeGreaterThanOrEqual(0.98 * CASES)
})
