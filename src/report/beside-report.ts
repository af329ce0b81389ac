import { conditionsOf } from '../budget/conditions'
import { type Odds, oddsOf } from '../budget/odds'
import type { MeasuredLine } from '../measure/measured'
import type { CircuitId, LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { circuitNetwork } from './circuit-network'
import { laidCatalog } from './learned-of'
import { type Outlook, outlookOf } from './outlook'
import type { ReportCircuit } from './report'
import type { Trunk } from './trunks'
import { trunksFrom } from './trunks-of-net'

/** What is reckoned of a circuit on demand: its bad days, and its odds where they are asked for. */
export interface Beside {
  readonly outlook: Outlook
  readonly odds?: Odds
  /** Its lines that lead to other boards; absent where there are none. */
  readonly trunks?: readonly Trunk[]
}

/** @param found the circuit as the report has it  @param wanted samples and seed, where odds are asked for */
export function besideReport(
  plan: Plan,
  found: ReportCircuit,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  wanted: { readonly samples: number; readonly seed: number } | null,
): Beside | null {
  const circuit = plan.circuits.get(found.id as CircuitId)
  if (!circuit) return null
  const catalog = laidCatalog(plan, measured)
  const model = circuitNetwork(plan, circuit, catalog, measured)
  const today = conditionsOf(plan.weather, plan.wireTempC)
  const outlook = outlookOf(plan, model, today, found)
  const trunks = trunksFrom(plan, circuit, catalog, measured)
  return {
    outlook,
    ...(trunks.length > 0 && { trunks }),
    ...(wanted && { odds: oddsOf(model, today, wanted) }),
  }
}
