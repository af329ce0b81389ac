import { GEAR_PRACTICE, type GearKind } from '../catalog/line-gear'
import { spanCount } from '../measure/overhead-spans'
import type { Line } from '../plan/plan'

/** How many of each a line takes. */
export type LineGear = Readonly<Record<GearKind, number>>

/** What several lines take together. */
export function totalGear(each: readonly LineGear[]): LineGear {
  const sum = { tag: 0, rod: 0, lance: 0, guy: 0, stake: 0, weight: 0 }
  // By name: one that changes from one look to the next costs many times more.
  for (const gear of each) {
    sum.tag += gear.tag
    sum.rod += gear.rod
    sum.lance += gear.lance
    sum.guy += gear.guy
    sum.stake += gear.stake
    sum.weight += gear.weight
  }
  return sum
}

/**
 * Tags, ground rods, lances with their guys and stakes, and weights of one line.
 *
 * Lances: one more than there are spans in each unbroken run of overhead legs, by the spans of the report. They are counted though a tree may serve.
 * Sources: `GEAR_SOURCES`.
 *
 * @param legs lengths on the map, m  @param tags how many hang on it
 */
export function gearOfLine(
  line: Pick<Line, 'legs' | 'return'>,
  legs: readonly { readonly mapM: number }[],
  tags: number,
): LineGear {
  let [lance, guy, weight] = [0, 0, 0]
  let runs = 0
  const closeRun = () => {
    if (runs === 0) return
    const own = runs + 1
    const tenths = Math.floor(own / 10)
    lance += own
    guy += (own - tenths) * GEAR_PRACTICE.guysAtLance + tenths * GEAR_PRACTICE.guysAtTenth
    runs = 0
  }
  for (const [i, leg] of line.legs.entries()) {
    const mapM = legs[i]?.mapM ?? 0
    if (leg.lay === 'overhead') runs += spanCount(mapM, leg.spanM)
    else closeRun()
    if (leg.lay === 'water') weight += 2 + Math.floor(mapM / GEAR_PRACTICE.weightEveryM)
  }
  closeRun()
  return {
    tag: tags,
    rod: line.return === 'earth' ? 2 : 0,
    lance,
    guy,
    stake: guy + lance * GEAR_PRACTICE.stakesAtFoot,
    weight,
  }
}
