import type { CircuitModel } from './circuit-model'
import { rowsOfKind } from './circuit-rows'
import { abs, add, type Complex, complex, divide, multiply, ONE, subtract, ZERO } from './complex'
import type { Conditions } from './conditions'
import { onHookSiemens } from './ringer'
import { type Generator, type RingingSide, ringingSides, sideRows } from './ringing'
import type { RingingRow, VoiceRow } from './rows'
import { portOfEachSet } from './supply-ports'
import { type Column, type Terminals, terminalsOf } from './terminals'
import { judge, leastOf } from './verdict'

/** A source or a handset of no ohms is taken to have this much, so that its current stays finite. */
const LEAST_OHM = 1e-6

/** What is left of ringing with one handset off hook. */
export interface LeftOffHook {
  /** Station of the handset. */
  readonly left: string
  /** The bell that then fares worst against its least volts; null where nothing rings. */
  readonly ringing: RingingRow | null
  /** Whether every other bell still rings. */
  readonly ok: boolean
}

/**
 * For each set in turn: ringing with its handset left lying. Its `dcOhms` lie across the pair, its own bell is cut off. On a unit with
 * ports it spoils the ringing of its own port alone.
 */
export function leftOffHookRows(model: CircuitModel, conditions: Conditions): LeftOffHook[] {
  const sides = ringingSides(model).map((side) => ({
    ...side,
    whole: leastOf('ringing', sideRows(side, conditions))?.row ?? null,
    byLying: leastByLying(side, model, conditions),
  }))
  const portOf = portOfEachSet(model)
  return model.sets.map(({ node }, set) => {
    const left = model.stations[node]!
    const rows = sides.map(({ port, whole, byLying }) => (port === portOf[set] ? byLying.get(left) : whole))
    const ringing =
      leastOf(
        'ringing',
        rows.filter((row) => row != null),
      )?.row ?? null
    return { left, ringing, ok: ringing === null || judge('ringing', ringing) !== 'fails' }
  })
}

/**
 * The bell that fares worst, for each handset lying. One network serves all: what lies across the pair at l, an admittance y more
 * than the bell that was there, makes Z_ba − Z_bl Z_la y / (1 + Z_ll y) of Z_ba (Sherman and Morrison, 1950).
 */
function leastByLying(
  { circuit, generators }: RingingSide,
  { sets: handsets }: CircuitModel,
  conditions: Conditions,
): Map<string, RingingRow | null> {
  const terminalsAt = new Map<number, Terminals>()
  const sources = generators.map((generator) => {
    const terminals = terminalsAt.get(generator.hz) ?? terminalsOf(circuit, conditions, generator.hz)
    terminalsAt.set(generator.hz, terminals)
    return { generator, terminals }
  })
  const bells = circuit.sets.flatMap(({ node, set }) =>
    set.ringer ? [{ node, minVolts: set.ringer.minVolts }] : [],
  )
  const least = new Map<string, RingingRow | null>()
  for (const lying of circuit.sets) {
    // A drop is no handset.
    if (!handsets.some(({ set }) => set === lying.set)) continue
    let worst: {
      readonly row: Omit<RingingRow, 'volts'>
      readonly node: number
      readonly share: number
    } | null = null
    for (const { generator, terminals } of sources) {
      const from = circuit.stations[generator.node]!
      const squareAt = voltsSquared(generator, terminals, lying, conditions)
      for (const { node, minVolts } of bells) {
        if (node === lying.node || (generator.ownRinger && node === generator.node)) continue
        const share = squareAt(node) / (minVolts * minVolts)
        if (worst && !(share < worst.share)) continue
        worst = { row: { from, to: circuit.stations[node]!, minVolts }, node, share }
      }
    }
    least.set(circuit.stations[lying.node]!, worst && rowOf(worst, sources, lying, circuit, conditions))
  }
  return least
}

interface Sounding {
  readonly generator: Generator
  readonly terminals: Terminals
}

/** The row of a bell that has been found, with its volts: the last source from its station that gives it least. */
function rowOf(
  { row, node }: { readonly row: Omit<RingingRow, 'volts'>; readonly node: number },
  sources: readonly Sounding[],
  lying: CircuitModel['sets'][number],
  { stations }: CircuitModel,
  conditions: Conditions,
): RingingRow {
  const squares = sources
    .filter(({ generator }) => stations[generator.node] === row.from)
    .filter(({ generator }) => !(generator.ownRinger && generator.node === node))
    .map(({ generator, terminals }) => voltsSquared(generator, terminals, lying, conditions)(node))
  return { from: row.from, to: row.to, volts: Math.sqrt(Math.min(...squares)), minVolts: row.minVolts }
}

/** Volts at a node, squared: so many are compared that their roots would cost most. */
function voltsSquared(
  generator: Generator,
  { terminalOfNode, column }: Terminals,
  { node, set }: CircuitModel['sets'][number],
  { ringFactor }: Conditions,
): (node: number) => number {
  const [a, l] = [terminalOfNode[generator.node]!, terminalOfNode[node]!]
  const [fromSource, fromLying] = [column(a), column(l)]
  const at = (of: Column, k: number): Complex => complex(of.re[k]!, of.im[k]!)
  const across = complex(1 / Math.max(LEAST_OHM, set.offHook.dcOhms))
  const more = subtract(across, onHookSiemens(set, generator.hz))
  const back = divide(more, add(ONE, multiply(at(fromLying, l), more)))
  const k = multiply(at(fromSource, l), back)
  const own = subtract(at(fromSource, a), multiply(at(fromLying, a), k))
  const ohms = Math.max(generator.ohms, LEAST_OHM)
  // The bell beside a lying handset is cut off already: its crank has none of its own to disconnect.
  const bell = generator.node === node ? ZERO : (generator.ownRinger ?? ZERO)
  const load = subtract(complex(1 / ohms), bell)
  const shortCircuit = (generator.volts * ringFactor) / ohms
  const amps = abs(divide(complex(shortCircuit), add(ONE, multiply(own, load))))
  const square = amps * amps
  return (other) => {
    const b = terminalOfNode[other]!
    const re = fromSource.re[b]! - (fromLying.re[b]! * k.re - fromLying.im[b]! * k.im)
    const im = fromSource.im[b]! - (fromLying.re[b]! * k.im + fromLying.im[b]! * k.re)
    return square * (re * re + im * im)
  }
}

/** The faintest pair with every set off hook, all of them listening; null where there are no two. */
export function crowdRow(model: CircuitModel, conditions: Conditions): VoiceRow | null {
  // A bell of just the speech circuit's ohms is a set that listens.
  const sets = model.sets.map(({ node, set }) => ({
    node,
    set: { ...set, ringer: { ohms: set.offHook.acOhms, minVolts: 0 } },
  }))
  return leastOf('voice', rowsOfKind('voice', { ...model, sets }, conditions))?.row ?? null
}
