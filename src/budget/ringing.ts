import type { TelephoneSet } from '../catalog/telephone-set'
import { memoryOfEach } from '../memo'
import type { CircuitModel } from './circuit-model'
import { abs, add, type Complex, complex, divide, modulus, multiply, ONE, subtract, ZERO } from './complex'
import type { Conditions } from './conditions'
import { onHookSiemens } from './ringer'
import type { RingingRow, TakeFigure } from './rows'
import { isAtSupply, supplyPorts } from './supply-ports'
import { type Terminals, terminalsOf } from './terminals'

/** A source with less resistance than this is taken to have it, so that its current stays finite. */
const LEAST_SOURCE_OHM = 1e-6

export interface Generator {
  /** Node at which it drives the circuit. */
  readonly node: number
  readonly volts: number
  readonly hz: number
  readonly ohms: number
  /** Admittance of its own ringer, disconnected while it turns, S; null for a supply, which has none. */
  readonly ownRinger: Complex | null
}

/** A circuit as its ringing current sees it, and every source that rings on it. */
export interface RingingSide {
  /** Of which port of the supply; 0 where it has none. */
  readonly port: number
  readonly circuit: CircuitModel
  readonly generators: readonly Generator[]
}

/** What is left of a source's volts behind the repeating coils of a circuit. */
const behindCoils = ({ coils }: CircuitModel, volts: number): number =>
  coils ? volts * 10 ** (-coils.ringDb / 20) : volts

/** The hand generators in the order of the sets. */
function cranksOf(circuit: CircuitModel): Generator[] {
  const cranks: Generator[] = []
  for (const { node, set } of circuit.sets) {
    const { generator } = set
    if (!generator) continue
    const volts = behindCoils(circuit, generator.volts)
    cranks.push({ node, ...generator, volts, ownRinger: onHookSiemens(set, generator.hz) })
  }
  return cranks
}

/** The source of ringing of a supply, where it has one. */
function sourceOf(circuit: CircuitModel): Generator[] {
  const { supply, node = 0 } = circuit.supply ?? {}
  const ring =
    supply?.kind === 'board' ? supply.generator : supply?.kind === 'series' ? undefined : supply?.ring
  if (!ring) return []
  const { volts, hz, ohms } = ring
  return [{ node, volts: behindCoils(circuit, volts), hz, ohms, ownRinger: null }]
}

const remembered = memoryOfEach<CircuitModel, readonly RingingSide[]>()

/**
 * The circuits in which ringing stays, each with what rings on it: a whole circuit, or every port of its supply. On a port of a board the
 * drop lies across the line while a set of it rings, and is cut off by the cord over which the board rings out; the operator's own set
 * calls nobody and is called by nobody.
 */
export const ringingSides = (model: CircuitModel): readonly RingingSide[] =>
  remembered(model, [], () => sidesOf(model))

function sidesOf(model: CircuitModel): readonly RingingSide[] {
  const ports = supplyPorts(model)
  if (ports.length === 0)
    return [{ port: 0, circuit: model, generators: [...cranksOf(model), ...sourceOf(model)] }]
  if (model.supply?.supply.kind !== 'board')
    return ports.map(({ circuit }, port) => ({
      port,
      circuit,
      generators: [...cranksOf(circuit), ...sourceOf(circuit)],
    }))
  return ports.flatMap((each, port): readonly RingingSide[] => {
    const { circuit } = each
    if (isAtSupply(each)) return []
    return [
      { port, circuit: withDrop(circuit), generators: cranksOf(circuit) },
      { port, circuit, generators: sourceOf(circuit) },
    ]
  })
}

/** A port with its drop across the line, as one bell more at the board. */
function withDrop(circuit: CircuitModel): CircuitModel {
  const { supply, node } = circuit.supply!
  if (!supply.drop) return circuit
  const { id, name, source } = supply
  const offHook = { dcOhms: 0, acOhms: 1, minMA: 0 }
  const drop: TelephoneSet = { id, name, talk: 'local', offHook, ringer: supply.drop, maxLossDb: 0, source }
  return { ...circuit, sets: [...circuit.sets, { node, set: drop }] }
}

/** Rms volts that a generator raises across the pair, by node. */
export function ringVoltsFrom(
  terminals: Terminals,
  generator: Generator,
  conditions: Conditions,
): (node: number) => number {
  const a = terminals.terminalOfNode[generator.node]!
  const { re, im } = terminals.column(a)
  const ohms = Math.max(generator.ohms, LEAST_SOURCE_OHM)
  const own: Complex = { re: re[a]!, im: im[a]! }
  const load = subtract(complex(1 / ohms), generator.ownRinger ?? ZERO)
  const shortCircuit = (generator.volts * conditions.ringFactor) / ohms
  // v_b = Z_ba · I / (1 + Z_aa · ΔY): the current that is left for the network after the source's own admittance.
  const amps = abs(divide(complex(shortCircuit), add(ONE, multiply(own, load))))
  return (node) => {
    const b = terminals.terminalOfNode[node]!
    return amps * modulus(re[b]!, im[b]!)
  }
}

/**
 * Ring volts: for each hand generator, and for a supply that rings, the rms volts across every other ringer, all bells bridged.
 *
 * A generator's own ringer is disconnected while it turns. From a supply every bell rings, one at the supply's own station too.
 * Ringing never passes from one port of a supply to another. Of repeating coils only their loss counts.
 */
export function eachRinging(model: CircuitModel, conditions: Conditions, take: TakeFigure): void {
  for (const side of ringingSides(model)) eachOnSide(side, conditions, take)
}

/** The rows of one side. */
export function sideRows(side: RingingSide, conditions: Conditions): RingingRow[] {
  const rows: RingingRow[] = []
  eachOnSide(side, conditions, (from, to, _, volts, minVolts) => rows.push({ from, to, volts, minVolts }))
  return rows
}

function eachOnSide({ circuit, generators }: RingingSide, conditions: Conditions, take: TakeFigure): void {
  const terminalsByHz = new Map<number, Terminals>()
  const { sets, stations } = circuit
  for (const generator of generators) {
    const terminals = terminalsByHz.get(generator.hz) ?? terminalsOf(circuit, conditions, generator.hz)
    terminalsByHz.set(generator.hz, terminals)
    const voltsAt = ringVoltsFrom(terminals, generator, conditions)
    const from = stations[generator.node]!
    for (const { node, set } of sets) {
      if (!set.ringer || (generator.ownRinger && node === generator.node)) continue
      const to = stations[node]!
      take(from, to, to, voltsAt(node), set.ringer.minVolts)
    }
  }
}
