import type { Position } from '../geo/position'
import { sagFactor } from '../measure/sag-factor'
import type { Lay, Plan } from '../plan/plan'
import { wireField } from '../route/wire-field'
import type { GridGround } from '../terrain/ground-from-grids'
import { type Area, ringsWithin } from '../terrain/rings-within'
import { type FarLimit, type FarStop, type FurtherLine, furthestM, stopAt } from './further-set'

/** A line of a plan that may yet become longer, and where its last place lies. */
export interface FarQuestion extends FurtherLine {
  readonly from: Position
  /** Wire that is laid up to there, m, without the tails. */
  readonly laidM: number
}

/** The ground within one limit. */
export interface FarShade {
  readonly limit: FarLimit
  readonly area: Area
}

export interface FarFound {
  /** How much wire the line may have, tails included, m: Infinity where nothing limits it, undefined where it is not known yet. */
  readonly limitsM: Readonly<Partial<Record<FarLimit, number>>>
  /** What fails first beyond that, today and at worst, as far as something does. */
  readonly stops: Readonly<Partial<Record<FarLimit, FarStop>>>
  /** The widest first. */
  readonly shades: readonly FarShade[]
  /** Side of the coarsest cells that the shades were reckoned on, m; 0 where there are none. */
  readonly cellM: number
  /** The place lies in ground that no wire may cross. */
  readonly isBarred: boolean
}

/** Fewer are coarse and there at once; more are for keeps. */
const COARSE_CELLS = 6_000
const FINE_CELLS = 40_000
/** Farther off than this no shade is drawn, m. */
const WIDEST_M = 50_000
/** Shades so much narrower than another are reckoned on finer cells of their own. */
const FINER = 3

/**
 * The ground on which a line could end with one more telephone, as shades that lie within each other: coarse at first, then as fine as a
 * crew walks; the odds from few circuits at first, then from many. Each news holds all that is known by then.
 */
export function farShades(
  question: FarQuestion,
  ground: GridGround | undefined,
  tell: (news: FarFound) => void,
): FarFound {
  const { plan } = question
  const limitsM: Partial<Record<FarLimit, number>> = {}
  const stops: Partial<Record<FarLimit, FarStop>> = {}
  const news = (cells: number): FarFound => ({
    limitsM: { ...limitsM },
    stops,
    ...shadesOver(question, limitsM, ground, cells),
  })
  for (const limit of ['today', 'worst'] as const) {
    limitsM[limit] = furthestM(question, limit)
    const stop = stopAt(question, limit, limitsM[limit])
    if (stop) stops[limit] = stop
  }
  if (plan.stock.length > 0) limitsM.stock = furthestM(question, 'stock')
  tell(news(COARSE_CELLS))
  limitsM.nine = furthestM(question, 'nine', { aboutM: limitsM.worst!, isRough: true })
  tell(news(COARSE_CELLS))
  limitsM.nine = furthestM(question, 'nine', { aboutM: limitsM.nine })
  return news(FINE_CELLS)
}

/** Metres along the ground that so much wire covers when it is laid as the line's last leg is. */
export function coveredM({ allowances }: Plan, lay: Lay, wireM: number): number {
  const sag = lay === 'overhead' ? sagFactor(allowances.sagPct) : 1
  return wireM / ((1 + allowances.slackPct[lay] / 100) * sag)
}

function shadesOver(
  { plan, line, from, laidM }: FarQuestion,
  limitsM: FarFound['limitsM'],
  ground: GridGround | undefined,
  cells: number,
): Pick<FarFound, 'shades' | 'cellM' | 'isBarred'> {
  const { lay } = plan.lines.get(line)!.legs.at(-1)!
  const hazards = [...plan.hazards.values()]
  const leftM = (limit: FarLimit) => coveredM(plan, lay, limitsM[limit]! - laidM - 2 * plan.allowances.tailM)
  const limits = (Object.keys(limitsM) as FarLimit[])
    .filter((limit) => leftM(limit) > 0 && leftM(limit) <= WIDEST_M)
    .sort((a, b) => leftM(b) - leftM(a))
  const shades: FarShade[] = []
  let [field, fieldM, cellM] = [undefined as ReturnType<typeof wireField>, 0, 0]
  for (const limit of limits) {
    if (!field || leftM(limit) * FINER < fieldM) {
      fieldM = leftM(limit)
      field = wireField(from, fieldM, hazards, ground, cells)
      if (!field) return { shades: [], cellM: 0, isBarred: true }
      cellM = Math.max(cellM, field.country.grid.cellM)
    }
    const { country, groundM } = field
    shades.push({
      limit,
      area: ringsWithin(groundM, { ...country.grid, toDeg: country.toDeg }, leftM(limit)),
    })
  }
  return { shades, cellM, isBarred: false }
}
