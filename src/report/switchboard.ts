import type { CircuitModel } from '../budget/circuit-model'
import type { CircuitRows, RingingRow, VoiceRow } from '../budget/rows'
import { isAtSupply, portOfEachSet, supplyPorts } from '../budget/supply-ports'
import { portsTaken } from '../budget/switchboard-notes'
import { isSwitchboard } from '../budget/trunk-ends'
import { judge, leastOf } from '../budget/verdict'
import type { CircuitId, LineId } from '../plan/id'

/** One port of a board or an exchange, and what hangs on it. */
export interface Jack {
  /** From 1, in the order in which the circuit names its lines; those of other boards' trunks come last. */
  readonly number: number
  readonly lines: readonly LineId[]
  /** Stations with a telephone on it: more than one share it as a party line, told apart by their place in this list. */
  readonly stations: readonly string[]
  /** The circuit of the board at its other end, where it is a trunk. */
  readonly trunkTo: CircuitId | null
  /** Of the bells rung from the board the one that fares worst, and of the sets that call it that which the drop answers least. */
  readonly bell: RingingRow | null
  readonly drop: RingingRow | null
}

/** What a user of a board asks, besides its rows. */
export interface Switchboard {
  readonly kind: 'board' | 'exchange'
  readonly station: string
  /** The operator's own telephone stands there; an exchange's has a jack like all others. */
  readonly hasOperator: boolean
  readonly jacks: readonly Jack[]
  /** Ports that are left; null where their number is not stated. */
  readonly spare: number | null
  /** Calls between two jacks that fail or are thin, the worst first, each pair once by its worse way. */
  readonly faint: readonly VoiceRow[]
  /** Through calls that can be made at once. */
  readonly callsAtOnce: number
}

/** `{ switchboard }` of a circuit with a board or an exchange, or nothing. */
export function switchboardOf(model: CircuitModel, rows: CircuitRows): { switchboard?: Switchboard } {
  if (!model.supply || !isSwitchboard(model.supply.supply)) return {}
  const { supply, node } = model.supply
  const station = model.stations[node]!
  const ports = supplyPorts(model)
  const own = ports.filter((port) => supply.kind === 'exchange' || !isAtSupply(port))
  const jacks = own.map(({ circuit }, k): Jack => {
    const stations = circuit.sets.map((set) => circuit.stations[set.node]!)
    const isHere = (id: string) => stations.includes(id)
    const ringing = (isOne: (row: RingingRow) => boolean) =>
      leastOf('ringing', rows.ringing.filter(isOne))?.row ?? null
    return {
      number: k + 1,
      lines: [...new Set(circuit.lines.map(({ id }) => id as LineId))],
      stations,
      trunkTo: model.trunks?.from.find(({ at }) => circuit.stations.includes(at))?.circuit ?? null,
      bell: ringing(({ from, to }) => from === station && isHere(to)),
      drop: supply.kind === 'board' ? ringing(({ from, to }) => to === station && isHere(from)) : null,
    }
  })
  const trunks = (model.trunks?.to ?? []).map(
    ({ circuit }, k): Jack => ({
      number: jacks.length + k + 1,
      lines: [],
      stations: [],
      trunkTo: circuit,
      bell: null,
      drop: null,
    }),
  )
  const all = [...jacks, ...trunks]
  const inUse = all.filter(({ stations, trunkTo }) => stations.length > 0 || trunkTo !== null).length
  return {
    switchboard: {
      kind: supply.kind as Switchboard['kind'],
      station,
      hasOperator: supply.kind === 'board' && model.sets.some((set) => set.node === node),
      jacks: all,
      spare: supply.ports === undefined ? null : Math.max(0, supply.ports - portsTaken(model, ports)),
      faint: faintCalls(model, rows.voice),
      callsAtOnce: Math.min(Math.floor(inUse / 2), supply.callsAtOnce ?? Number.POSITIVE_INFINITY),
    },
  }
}

/** Calls between two jacks that are faint. Rows come in twos, one for each way of a pair. */
export function faintCalls(model: CircuitModel, voice: readonly VoiceRow[]): VoiceRow[] {
  const portOf = portOfEachSet(model)
  const portAt = new Map(model.sets.map(({ node }, k) => [model.stations[node]!, portOf[k]!]))
  const through = voice.filter(({ from, to }) => portAt.get(from) !== portAt.get(to))
  const worse = new Map<string, VoiceRow>()
  for (const row of through) {
    if (judge('voice', row) === 'works') continue
    const key = [row.from, row.to].sort().join('\n')
    const before = worse.get(key)
    if (!before || row.lossDb > before.lossDb) worse.set(key, row)
  }
  return [...worse.values()].sort((a, b) => a.maxDb - a.lossDb - (b.maxDb - b.lossDb))
}
