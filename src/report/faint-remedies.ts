import { rowsOfKind } from '../budget/circuit-rows'
import { conditionsOf } from '../budget/conditions'
import type { VoiceRow } from '../budget/rows'
import { supplyPorts } from '../budget/supply-ports'
import { RANK } from '../budget/verdict'
import { BUILT_IN } from '../catalog/built-in'
import { mergeCatalogs } from '../catalog/catalog'
import type { Learned } from '../field/learned-figures'
import type { CircuitId, LineId } from '../plan/id'
import { portsNeeded } from '../plan/lines-at-board'
import type { Plan } from '../plan/plan'
import { circuitNetwork } from './circuit-network'
import { laidCatalog, learnedOf } from './learned-of'
import { mayDoBetter } from './possible-changes'
import { mostTrials } from './remedies'
import { applyChanges, type Change } from './remedy-changes'
import { chooseRemedies } from './remedy-ranking'
import { type Lengths, lengthsOf, sparesOthers, standing, tryAll } from './remedy-trials'
import type { Remedy } from './report'
import { faintCalls } from './switchboard'

/**
 * What would mend just the faint calls of a board or an exchange: better wire or a second pair on the lines of the fewest jacks that are in
 * all of those calls, or of all their jacks; other telephones; a board that takes less of speech. Listed is what leaves none of them faint and
 * nothing worse than before. Empty where no call is faint.
 */
export function faintRemedies(plan: Plan, id: CircuitId, measured: Lengths): Remedy[] {
  const most = mostTrials(plan.circuits.get(id)!)
  const learned = learnedOf(plan, measured)
  const faint = faintIn(plan, id, measured, learned)
  if (faint.length === 0 || most === 0) return []
  const before = standing(plan, [id], measured, learned)
  const helping = candidates(plan, id, measured, faint)
    .slice(0, most)
    .filter((changes) => {
      const changed = applyChanges(plan, id, changes)
      const lengths = lengthsOf(changed, plan, measured)
      return faintIn(changed, id, lengths, learned).length === 0
    })
  const good = tryAll(plan, id, helping, measured, learned).filter(
    (trial) =>
      RANK[trial.verdict] >= RANK[before.verdict] &&
      RANK[trial.worst] >= RANK[before.worst] &&
      sparesOthers(plan, measured, id, trial, learned),
  )
  return chooseRemedies(plan, good, measured)
}

function faintIn(plan: Plan, id: CircuitId, measured: Lengths, learned: Learned): VoiceRow[] {
  const model = networkOf(plan, id, measured, learned)
  return faintCalls(model, rowsOfKind('voice', model, conditionsOf(plan.weather, plan.wireTempC)))
}

const networkOf = (plan: Plan, id: CircuitId, measured: Lengths, learned = learnedOf(plan, measured)) =>
  circuitNetwork(plan, plan.circuits.get(id)!, laidCatalog(plan, measured, learned), measured)

/** The lines that hang on each jack, by the stations of its telephones. */
function linesByStation(
  plan: Plan,
  id: CircuitId,
  measured: Lengths,
): ReadonlyMap<string, readonly LineId[]> {
  return new Map(
    supplyPorts(networkOf(plan, id, measured)).flatMap(({ circuit }) => {
      const lines = [...new Set(circuit.lines.map((line) => line.id as LineId))]
      return circuit.sets.map(({ node }) => [circuit.stations[node]!, lines] as const)
    }),
  )
}

/** Of the jacks in faint calls so few that each call has one of them: always that in most of those that are left. */
function fewestJacks(
  faint: readonly VoiceRow[],
  linesAt: ReadonlyMap<string, readonly LineId[]>,
): readonly (readonly LineId[])[] {
  const chosen: (readonly LineId[])[] = []
  for (let left = faint; left.length > 0; ) {
    const counts = new Map<readonly LineId[], number>()
    for (const { from, to } of left)
      for (const lines of [linesAt.get(from)!, linesAt.get(to)!])
        if (lines.length > 0) counts.set(lines, (counts.get(lines) ?? 0) + 1)
    const [next] = [...counts].sort((a, b) => b[1] - a[1])
    if (!next) break
    chosen.push(next[0])
    left = left.filter(({ from, to }) => linesAt.get(from) !== next[0] && linesAt.get(to) !== next[0])
  }
  return chosen
}

function candidates(
  plan: Plan,
  id: CircuitId,
  measured: Lengths,
  faint: readonly VoiceRow[],
): readonly (readonly Change[])[] {
  const circuit = plan.circuits.get(id)!
  const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
  const linesAt = linesByStation(plan, id, measured)
  const stations = new Set(faint.flatMap(({ from, to }) => [from, to]))
  const few = fewestJacks(faint, linesAt).flat()
  const all = [...new Set([...stations].flatMap((station) => linesAt.get(station)!))]
  const places = all.length === few.length ? [few] : [few, all]
  const found: (readonly Change[])[] = []
  for (const lines of places) {
    for (const wire of catalog.wires.values()) {
      const better = lines.filter((line) => mayDoBetter(wire, catalog.wires.get(plan.lines.get(line)!.wire)!))
      if (better.length > 0) found.push(better.map((line) => ({ kind: 'wire', line, wire: wire.id })))
    }
    if (!circuit.over) found.push(lines.map((line) => ({ kind: 'second-pair', line })))
  }
  for (const from of new Set([...stations].map((at) => circuit.sets.get(at as never)!)))
    for (const to of catalog.sets.keys()) if (to !== from) found.push([{ kind: 'sets', from, to }])
  const own = catalog.supplies.get(circuit.supply!.type)!
  const ports = portsNeeded(plan, circuit, circuit.supply!.at, own.kind)
  for (const other of catalog.supplies.values())
    if (
      other.kind === own.kind &&
      (other.insertionDb ?? 0) < (own.insertionDb ?? 0) &&
      (other.ports ?? ports) >= ports
    )
      found.push([{ kind: 'board', type: other.id, at: circuit.supply!.at }])
  return found.filter((changes) => changes.length > 0)
}
