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
  /** An exchange finds the other by a number. */
  | { readonly do: 'dial' }
  /** An operator answers the crank and puts through. */
  | { readonly do: 'by-operator'; readonly at: StationId }
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
function codesOf(circuit: Circuit, model: CircuitModel): ReadonlyMap<StationId, readonly Ring[]> {
  const { sets, supply } = model
  // An exchange rings one alone, and so does an operator.
  if (supply?.supply.kind === 'exchange' || supply?.supply.kind === 'board') return new Map()
  const byHand =
    sets.some(({ set }) => set.generator) || (supply?.supply.ring && supply.supply.kind === 'feed')
  return byHand && sets.length > NO_CODE ? ringCodes(circuit) : new Map()
}

/** Who calls whom on one circuit, reckoned once for all of its stations. */
export interface CircuitCalls {
  readonly circuit: Circuit
  readonly codes: ReadonlyMap<StationId, readonly Ring[]>
  readonly from: (station: StationId) => readonly Call[]
}

/**
 * How the sets of a circuit call each other. A kind of supply that rings in a way of its own is a case of `deedOf`; the volts are the report's.
 */
export function circuitCalls(
  circuit: Circuit,
  report: ReportCircuit,
  model: CircuitModel,
  conditions: Conditions,
): CircuitCalls {
  const { sets, stations, supply } = model
  const codes = codesOf(circuit, model)
  const { calls } = callsOf(model, conditions)
  const indexOf = new Map(sets.map(({ node }, i) => [stations[node]! as StationId, i]))
  const supplyAt = supply && stations[supply.node]
  const rows = new Map(
    report.ringing.map(({ from, to, volts, minVolts }) => [`${from}\n${to}`, { volts, minVolts }]),
  )
  // A unit rings from where it stands, whoever has lifted.
  const volts = (from: string, to: string) =>
    rows.get(`${from}\n${to}`) ?? rows.get(`${supplyAt}\n${to}`) ?? null
  const deedOf = (from: number, to: number): Deed => {
    const code = codes.get(stations[sets[to]!.node] as StationId) ?? null
    if (supply?.supply.kind === 'series') return { do: 'agree' }
    if (!calls(from, to)) return { do: 'nothing' }
    if (supply?.supply.kind === 'exchange') return { do: 'dial' }
    if (supply?.supply.kind === 'board') {
      if (stations[sets[from]!.node] === supplyAt) return { do: 'ring', code }
      if (stations[sets[to]!.node] === supplyAt) return { do: 'crank', code }
      return { do: 'by-operator', at: supplyAt as StationId }
    }
    if (sets[from]!.set.generator && sets[to]!.set.ringer) return { do: 'crank', code }
    if (supply?.supply.kind === 'ringdown' && sets[to]!.set.ringer) return { do: 'lift-rings' }
    if (supply?.supply.ring && sets[to]!.set.ringer)
      return stations[sets[from]!.node] === supplyAt
        ? { do: 'ring', code }
        : { do: 'rung-from', at: supplyAt as StationId, code }
    return { do: 'lift-lamp' }
  }
  const rings = ({ do: what }: Deed) => what !== 'lift-lamp' && what !== 'agree' && what !== 'nothing'
  return {
    circuit,
    codes,
    from: (station) => {
      const a = indexOf.get(station)
      if (a === undefined) return []
      return [...circuit.sets.keys()].flatMap((id) => {
        const b = indexOf.get(id)
        if (b === undefined || id === station) return []
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
    },
  }
}
