import type { MeasuredLine } from '../measure/measured'
import type { CircuitId, LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { remediesFor } from '../report/remedies'
import type { Remedy } from '../report/report'

/** What the page asks: these circuits of this plan. */
export interface RemedyQuestion {
  readonly plan: Plan
  readonly measured: ReadonlyMap<LineId, MeasuredLine>
  readonly circuits: readonly CircuitId[]
}

/** One answer a circuit, as soon as it is known. */
export interface RemedyAnswer {
  readonly circuit: CircuitId
  readonly remedies: readonly Remedy[]
}

self.onmessage = ({ data }: MessageEvent<RemedyQuestion>) => {
  for (const circuit of data.circuits) {
    const answer: RemedyAnswer = { circuit, remedies: remediesFor(data.plan, circuit, data.measured) }
    self.postMessage(answer)
  }
}
