import type { Lack } from '../budget/circuit-notes'
import { circuitRows } from '../budget/circuit-rows'
import { completenessOf } from '../budget/completeness'
import { conditionsOf } from '../budget/conditions'
import { worstCorner } from '../budget/envelope'
import { worksAtWorst } from '../budget/odds'
import type { Check } from '../budget/rows'
import { leastMargin, verdictOf } from '../budget/verdict'
import { BUILT_IN } from '../catalog/built-in'
import { mergeCatalogs } from '../catalog/catalog'
import { planSpools } from '../materials/plan-spools'
import { circuitsOfLine } from '../plan/circuit-topology'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { circuitNetwork } from './circuit-network'
import { laidCatalog, learnedOf } from './learned-of'
import type { Lengths } from './remedy-trials'

/** A plan with one more line, to a telephone that has no place yet: its length is what is asked for. */
export interface FurtherLine {
  readonly plan: Plan
  readonly line: LineId
  readonly measured: Lengths
}

/** What limits the wire of that line: the checks with the figures as printed, today and at worst; nine of ten real circuits; the stock. */
export type FarLimit = 'today' | 'worst' | 'nine' | 'stock'

/** Longer than any line that is laid by hand, m. */
const LONGEST_M = 100_000
/** The first length that is tried, m, and how much longer the next. */
const FIRST_M = 50
const GROWTH = 1.4
/** How near the greatest length is told, as a part of it: a crew's measure is no finer. */
const CLOSE = 0.002
const CLOSE_TO_NINE = 0.02
/** Nine of ten is reckoned from circuits drawn at random: ± 4 in a hundred. */
const SAMPLES = { samples: 200, seed: 1 }
/** At first from fewer, and less closely. */
const ROUGH_SAMPLES = { samples: 40, seed: 1 }
const CLOSE_TO_ROUGH = 0.1
const NINE_OF_TEN = 0.9

/** Where the limit is likely to be, and how sure it must be told. */
interface About {
  readonly aboutM?: number
  /** From fewer circuits, and less closely: a first word. */
  readonly isRough?: boolean
}

/**
 * How much wire the line may have, tails included, m, up to which nothing that is asked fails: 0 where it fails with none, Infinity where
 * 100 km are no limit. Beyond a length that fails no longer one is looked for.
 */
export function furthestM(
  further: FurtherLine,
  limit: FarLimit,
  { aboutM = FIRST_M, isRough = false }: About = {},
): number {
  const holds = HOLDS[limit](further, isRough)
  const close = limit !== 'nine' ? CLOSE : isRough ? CLOSE_TO_ROUGH : CLOSE_TO_NINE
  if (!holds(0)) return 0
  let [good, bad] = [0, Number.POSITIVE_INFINITY]
  for (let m = Math.min(Math.max(aboutM, FIRST_M), LONGEST_M), isUp: boolean | undefined; ; ) {
    const isGood = holds(m)
    if (isGood) good = m
    else bad = m
    isUp ??= isGood
    if (isGood !== isUp) break
    if (isUp ? good >= LONGEST_M : bad <= FIRST_M) break
    m = isUp ? m * GROWTH : m / GROWTH
  }
  if (bad === Number.POSITIVE_INFINITY) return bad
  while (bad - good > Math.max(1, close * good)) {
    const middle = (good + bad) / 2
    if (holds(middle)) good = middle
    else bad = middle
  }
  return good
}

/** What a circuit lacks, or the check with least to spare, where the line is longer than that by a hair. */
export type FarStop =
  | { readonly kind: 'lack'; readonly lack: Lack }
  | { readonly kind: 'check'; readonly check: Check }

export function stopAt(further: FurtherLine, limit: 'today' | 'worst', wireM: number): FarStop | undefined {
  if (wireM === Number.POSITIVE_INFINITY) return undefined
  const { modelAt, today } = circuitAt(further)
  const model = modelAt(wireM === 0 ? 0 : wireM + 2 * Math.max(1, CLOSE * wireM))
  const [lack] = completenessOf(model, today).missing
  if (lack) return { kind: 'lack', lack }
  const least =
    limit === 'today' ? leastMargin(circuitRows(model, today)) : worstCorner(model, today, []).least
  return least ? { kind: 'check', check: least.check } : undefined
}

type Holds = (further: FurtherLine, isRough: boolean) => (wireM: number) => boolean

/** The circuit of the line at each length, as the report would have it. */
function circuitAt({ plan, line, measured }: FurtherLine) {
  const circuit = circuitsOfLine(plan, line)[0]!
  // What was read of the wire that lies there is not read anew at each length.
  const learned = learnedOf(plan, measured)
  const catalog = laidCatalog(plan, measured, learned)
  const today = conditionsOf(plan.weather, plan.wireTempC)
  const modelAt = (wireM: number) => circuitNetwork(plan, circuit, catalog, lengthened(measured, line, wireM))
  return { modelAt, today }
}

const lengthened = (measured: Lengths, line: LineId, wireM: number): Lengths =>
  new Map(measured).set(line, { ...measured.get(line)!, wireM })

const HOLDS: Readonly<Record<FarLimit, Holds>> = {
  today: (further) => {
    const { modelAt, today } = circuitAt(further)
    return (wireM) => {
      const model = modelAt(wireM)
      return verdictOf(circuitRows(model, today), completenessOf(model, today).missing) !== 'fails'
    }
  },
  worst: (further) => {
    const { modelAt, today } = circuitAt(further)
    return (wireM) => {
      const model = modelAt(wireM)
      return worstCorner(model, today, completenessOf(model, today).missing).verdict !== 'fails'
    }
  },
  nine: (further, isRough) => {
    const { modelAt, today } = circuitAt(further)
    const drawn = { ...(isRough ? ROUGH_SAMPLES : SAMPLES), share: NINE_OF_TEN }
    return (wireM) => worksAtWorst(modelAt(wireM), today, drawn)
  },
  stock: ({ plan, line, measured }) => {
    if (plan.stock.length === 0) return () => true
    const { wire } = plan.lines.get(line)!
    const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
    return (wireM) => {
      const { spools } = planSpools(plan, catalog, lengthened(measured, line, wireM))
      const own = spools.find((each) => each.wire === wire)
      return !own || (own.missingM === 0 && own.notLaid.length === 0)
    }
  },
}
