import { goesByEarth } from '../fault/bridge'
import type { Evidence } from '../fault/evidence'
import { type FaultFound, locateFault } from '../fault/locate'
import { lineTags } from '../measure/line-tags'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'
import { bad, ok, type Problem, type Result } from '../problem'
import { circuitNetwork } from './circuit-network'
import { laidCatalog } from './learned-of'

type Measured = ReadonlyMap<LineId, MeasuredLine>

/** Where a fault of a circuit lies, with the wire that really lies there; refused is evidence of a place or a bridge that cannot be. */
export function locateInCircuit(
  plan: Plan,
  circuit: Circuit,
  measured: Measured,
  evidence: readonly Evidence[],
): Result<FaultFound> {
  const model = circuitNetwork(plan, circuit, laidCatalog(plan, measured), measured)
  const problems = evidence.flatMap((each, index): Problem[] => {
    const isBridge = 'murray' in each || 'varley' in each
    const at = `evidence[${index}]`
    const outside = outOfReach(each, measured)
    if (outside) return [{ code: 'out-of-range', at, message: outside }]
    if (!isBridge || !goesByEarth({ plan, model, figures: [], nepers: [] }, each)) return []
    const message = 'A bridge needs a good wire back, and a line on this way returns by earth.'
    return [{ code: 'bridge-by-earth', at, message }]
  })
  if (problems.length > 0) return bad(...problems)
  return ok(locateFault(plan, model, evidence, tagsOf(plan, circuit, measured)))
}

/** A meter that stands farther out than its line is long. */
function outOfReach(each: Evidence, measured: Measured): string | undefined {
  if (!('line' in each)) return undefined
  const { wireM } = measured.get(each.line as LineId)!
  return each.wireM > wireM + 1e-6
    ? `The meter stands at ${each.wireM} m of wire, and the line has ${wireM.toFixed(1)} m: give a place on it.`
    : undefined
}

/** Places where a pair can be opened and measured. */
const tagsOf = (plan: Plan, circuit: Circuit, measured: Measured) =>
  circuit.lines.flatMap((id) =>
    lineTags(plan, measured.get(id)!, plan.lines.get(id)!).map(({ wireM }) => ({ line: id, wireM })),
  )
