import type { CircuitModel } from '../budget/circuit-model'
import type { Conditions } from '../budget/conditions'
import { type RingingSide, ringVoltsFrom } from '../budget/ringing'
import type { RingingRow, Verdict, VoiceRow } from '../budget/rows'
import { joinedAt, type Port, supplyPorts } from '../budget/supply-ports'
import { terminalsOf } from '../budget/terminals'
import { judge, RANK } from '../budget/verdict'
import { lossBetweenSets, VOICE_HZ } from '../budget/voice-loss'
import type { CircuitId, LineId } from '../plan/id'

/** A call through two boards. */
export interface TrunkCall extends VoiceRow {
  /** Stations of the boards at which an operator must put it through; empty where both exchanges do it by themselves. */
  readonly byHand: readonly string[]
}

/** A line between two boards, each a port of the other. */
export interface Trunk {
  /** The circuit whose line it is, and the one to whose board it leads. */
  readonly circuits: readonly [CircuitId, CircuitId]
  readonly stations: readonly [string, string]
  readonly lines: readonly LineId[]
  /** From one board to the drop of the other. */
  readonly ringing: readonly RingingRow[]
  /** Every pair of telephones of the two boards, the worst first. */
  readonly calls: readonly TrunkCall[]
  /** Two exchanges each take the other for a telephone that never lifts: over such a line nobody is called. */
  readonly joinsExchanges: boolean
  readonly verdict: Verdict
}

interface Side {
  readonly id: CircuitId
  readonly model: CircuitModel
}

/**
 * What a line of one board's circuit does that leads to the board of another: ringing from board to board, and speech between every two
 * telephones of the two, through both cords. Undefined where no line leads there.
 *
 * A circuit has one supply, so that the far board is none of its own: on the line it is a drop and a generator, as any board is on a port.
 */
export function trunkOf(near: Side, far: Side, conditions: Conditions): Trunk | undefined {
  const [here, there] = [near.model.supply!, far.model.supply!]
  const at = far.model.stations[there.node]!
  const port = supplyPorts(near.model).find(({ circuit }) => circuit.stations.includes(at))
  if (!port) return undefined
  const end = port.circuit.stations.indexOf(at)
  const stations = [near.model.stations[here.node]!, at] as const
  const ringing = [
    ...ringingTo(port.circuit, { from: 0, to: end }, here.supply, there.supply, conditions),
    ...ringingTo(port.circuit, { from: end, to: 0 }, there.supply, here.supply, conditions),
  ]
  const byHand = [here, there].flatMap(({ supply }, k) => (supply.kind === 'board' ? [stations[k]!] : []))
  const calls = through(near.model, far.model, { port, end }, conditions)
    .map((row) => ({ ...row, byHand }))
    .sort((a, b) => a.maxDb - a.lossDb - (b.maxDb - b.lossDb))
  const joinsExchanges = byHand.length === 0
  const verdicts = [
    ...ringing.map((row) => judge('ringing', row)),
    ...calls.map((row) => judge('voice', row)),
  ]
  return {
    circuits: [near.id, far.id],
    stations,
    lines: [...new Set(port.circuit.lines.map(({ id }) => id as LineId))],
    ringing,
    calls,
    joinsExchanges,
    verdict: joinsExchanges ? 'fails' : verdicts.reduce((a, b) => (RANK[b] < RANK[a] ? b : a), 'works'),
  }
}

type Supply = NonNullable<CircuitModel['supply']>['supply']

/** One board ringing the drop of the other over the line between, every bell of the line bridged; an exchange rings as on any port. */
function ringingTo(
  circuit: CircuitModel,
  { from, to }: { readonly from: number; readonly to: number },
  ringer: Supply,
  rung: Supply,
  conditions: Conditions,
): RingingRow[] {
  const source = ringer.kind === 'board' ? ringer.generator : ringer.ring
  const { drop } = rung
  if (!source || !drop) return []
  const offHook = { dcOhms: 0, acOhms: 1, minMA: 0 }
  const { id, name, source: says } = rung
  const bell = { id, name, talk: 'local' as const, offHook, ringer: drop, maxLossDb: 0, source: says }
  const coilDb = circuit.coils?.ringDb ?? 0
  const volts = source.volts * 10 ** (-coilDb / 20)
  const { volts: _, ...behind } = source
  const side: RingingSide = {
    port: 0,
    circuit: {
      ...circuit,
      sets: [...circuit.sets, { node: to, set: bell }],
      supply: { supply: ringer, node: from },
    },
    generators: [{ node: from, ...behind, volts, ownRinger: null }],
  }
  const [generator] = side.generators
  const terminals = terminalsOf(side.circuit, conditions, source.hz)
  return [
    {
      from: circuit.stations[from]!,
      to: circuit.stations[to]!,
      volts: ringVoltsFrom(terminals, generator!, conditions)(to),
      minVolts: drop.minVolts,
    },
  ]
}

/** Speech between the telephones of two boards: the caller's port, the trunk and the called one's port joined, all others cut off. */
function through(
  near: CircuitModel,
  far: CircuitModel,
  { port, end }: { readonly port: Port; readonly end: number },
  conditions: Conditions,
): VoiceRow[] {
  const cordsDb =
    (far.supply!.supply.insertionDb ?? 0) + (far.coils?.voiceDb ?? 0) + (near.coils?.voiceDb ?? 0)
  const rows: VoiceRow[] = []
  for (const mine of supplyPorts(near)) {
    const isOnTrunk = mine === port
    if (mine.circuit.sets.length === 0) continue
    const reached = isOnTrunk ? port.circuit : joinedAt(port.circuit, 0, mine.circuit)
    const nearDb = isOnTrunk ? 0 : (near.supply!.supply.insertionDb ?? 0)
    for (const theirs of supplyPorts(far)) {
      if (theirs.circuit.sets.length === 0) continue
      const joined = joinedAt(reached, end, theirs.circuit)
      const lossDb = lossBetweenSets(joined, conditions, VOICE_HZ)
      const first = isOnTrunk ? 0 : port.circuit.sets.length
      for (const [i, { node, set }] of mine.circuit.sets.entries()) {
        for (const [j, other] of theirs.circuit.sets.entries()) {
          rows.push({
            from: mine.circuit.stations[node]!,
            to: theirs.circuit.stations[other.node]!,
            lossDb: lossDb(first + i, reached.sets.length + j) + nearDb + cordsDb,
            maxDb: Math.min(set.maxLossDb, other.set.maxLossDb),
          })
        }
      }
    }
  }
  return rows
}
