import { tradeOf } from '../budget/checks'
import type { CircuitModel, ModelLine } from '../budget/circuit-model'
import { shortestWay } from '../budget/path'
import type { Check } from '../budget/rows'
import type { LineId, StationId } from '../plan/id'

/** Up to so many lines and stations all are looked at; beyond, so many of the weakest. */
const LINES = 10
const STATIONS = 16

/** Stations whose wire a check depends on: both ends of a call, and where the supply stands. */
function endsOf(check: Check, model: CircuitModel): readonly number[] {
  const { call, isFed } = tradeOf(check.kind)
  const { from, to } = call(check as never)
  const nodes = [from, to].map((name) => model.stations.indexOf(name))
  return isFed && model.supply ? [model.supply.node, ...nodes] : nodes
}

/**
 * Where a change could help the tightest checks of a circuit: the lines of most ohms on the ways between the stations of those checks,
 * and the stations along them and with a set. On a small circuit all of it.
 */
export function weakPlaces(
  model: CircuitModel,
  checks: readonly Check[],
): { readonly lines: readonly LineId[]; readonly stations: readonly StationId[] } {
  const onTheWay = checks.flatMap((check) => {
    const [first, ...others] = endsOf(check, model)
    return others.flatMap((other) => shortestWay(model, first!, other) ?? [])
  })
  const ohms = ({ wire, wireM }: ModelLine) => wire.loopOhmPerKm * wireM
  const all = model.lines.length <= LINES
  const lines = all ? model.lines : [...new Set(onTheWay)].sort((a, b) => ohms(b) - ohms(a)).slice(0, LINES)
  const along = [...lines.flatMap(({ from, to }) => [from, to]), ...model.sets.map(({ node }) => node)]
  const nodes =
    model.stations.length <= STATIONS ? [...model.stations.keys()] : [...new Set(along)].slice(0, STATIONS)
  return {
    lines: lines.map((line) => line.id as LineId),
    stations: nodes.map((node) => model.stations[node] as StationId),
  }
}
