import type { Catalog } from '../catalog/catalog'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import type { Caution } from './caution'

/** How much the two wires of a pair differ, as a part of one of them: splices and nicks, an allowance. */
const UNBALANCE = 0.01
/** What the ridden pair is closed with at each end, Ω: a telephone. */
const TELEPHONE_OHM = 600

/**
 * What a phantom or simplex is heard by on the pairs that it rides on.
 *
 * Half of its current flows in each wire of a pair; a difference ΔR of the two drives ΔR I/2 round the pair, through a telephone at each end:
 * i / I = ΔR / 4Z. A test holds it against transformers of coupled coils in the circuit simulator.
 */
export function riderCautions(
  plan: Plan,
  catalog: Catalog,
  measured: ReadonlyMap<LineId, MeasuredLine>,
): Caution[] {
  return [...plan.circuits.values()].flatMap(({ id, over, lines }): Caution[] => {
    if (!over) return []
    const wireOhms = lines.reduce((sum, line) => {
      const { loopOhmPerKm } = catalog.wires.get(plan.lines.get(line)!.wire)!
      return sum + (loopOhmPerKm * measured.get(line)!.wireM) / 2000
    }, 0)
    const unbalanceOhms = UNBALANCE * wireOhms
    if (!(unbalanceOhms > 0)) return []
    const crosstalkDb = 20 * Math.log10((4 * TELEPHONE_OHM) / unbalanceOhms)
    return [{ code: 'rider-balance', where: id, over, unbalanceOhms, crosstalkDb }]
  })
}
