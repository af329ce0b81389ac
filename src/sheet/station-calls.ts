import { callsOf } from '../budget/calling'
import type { CircuitModel } from '../budget/circuit-model'
import type { Conditions } from '../budget/conditions'
import type { StationId } from '../plan/id'
import type { Circuit } from '../plan/plan'
import { type Ring, ringCodes } from '../plan/ring-code'
import type { ReportCircuit } from '../report/report'

/** What one does to call another. */
export type Deed =
  | { readonly do: 'crank'; readonly code: readonly Ring[] | null }
  | { readonly do: 'ring'; readonly code: readonly Ring[] | null }
  /** Whoever stands at the supply rings for both. */
  | { readonly do: 'rung-from'; readonly at: StationId; readonly code: readonly Ring[] | null }
  | { readonly do: 'lift-rings' }
  | { readonly do: 'lift-lamp' }
  | { readonly do: 'agree' }
  | { readonly do: 'nothing' }

/** How one set calls another, and what its bell then gets. */
export interface Call {
  readonly station: StationId
  readonly deed: Deed
  readonly there: { readonly volts: number; readonly minVolts: number } | null
  /** What the bell here gets when that set calls. */
  readonly here: { readonly volts: number; readonly minVolts: number } | null
}

/** So many sets on one line need no code: each call is for the other. */
const NO_CODE = 2

/** The codes of a circuit's sets; none where two sets share the line, or where nobody rings by hand. */
export function codesOf(circuit: Circuit, model: CircuitModel): ReadonlyMap<StationId, readonly Ring[]> {
  const { sets, supply } = model
  const byHand =
    sets.some(({ set }) => set.generator) || (supply?.supply.ring && supply.supply.kind === 'feed')
  return byHand && sets.length > NO_CODE ? ringCodes(circuit) : new Map()
}

/**
 * How the set at one station calls every other of its circuit. A kind of supply that rings in a way of its own is a case of `deedOf`; the
 * volts are the report's.
 */
export function callsFrom(
  circuit: Circuit,
  report: ReportCircuit,
  model: CircuitModel,
  conditions: Conditions,
  station: StationId,
): readonly Call[] {
  const { sets, stations, supply } = model
  const codes = codesOf(circuit, model)
  const { calls } = callsOf(model, conditions)
  const indexOf = (id: string) => sets.findIndex(({ node }) => stations[node] === id)
  const a = indexOf(station)
  if (a < 0) return []
  const supplyAt = supply && stations[supply.node]
  // A unit rings from where it stands, whoever has lifted.
  const volts = (from: string, to: string) => {
    const own = report.ringing.find((row) => row.from === from && row.to === to)
    const row = own ?? report.ringing.find((each) => each.from === supplyAt && each.to === to)
    return row ? { volts: row.volts, minVolts: row.minVolts } : null
  }
  const deedOf = (from: number, to: number): Deed => {
    const code = codes.get(stations[sets[to]!.node] as StationId) ?? null
    if (supply?.supply.kind === 'series') return { do: 'agree' }
    if (!calls(from, to)) return { do: 'nothing' }
    if (sets[from]!.set.generator && sets[to]!.set.ringer) return { do: 'crank', code }
    if (supply?.supply.kind === 'ringdown' && sets[to]!.set.ringer) return { do: 'lift-rings' }
    if (supply?.supply.ring && sets[to]!.set.ringer)
      return stations[sets[from]!.node] === supplyAt
        ? { do: 'ring', code }
        : { do: 'rung-from', at: supplyAt as StationId, code }
    return { do: 'lift-lamp' }
  }
  const rings = ({ do: what }: Deed) => what !== 'lift-lamp' && what !== 'agree' && what !== 'nothing'
  return [...circuit.sets.keys()]
    .filter((id) => id !== station)
    .flatMap((id) => {
      const b = indexOf(id)
      if (b < 0) return []
      const deed = deedOf(a, b)
      return [
        {
          station: id,
          deed,
          there: rings(deed) ? volts(station, id) : null,
          here: rings(deedOf(b, a)) ? volts(id, station) : null,
        },
      ]
    })
}
