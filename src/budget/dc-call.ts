import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { onHookSiemens } from './ringer'
import { solveReal } from './solve-real'
import type { Terminals } from './terminals'

/** A source or a set with less resistance than this is taken to have it, so that its current stays finite. */
const LEAST_OHM = 1e-6

/** What the battery does while some sets are off hook. */
export interface DcCall {
  /** Current through each of those sets, mA, in their order. */
  readonly mA: readonly number[]
  /** What the source delivers in all, A. */
  readonly amps: number
  /** Volts across the pair at a node that the terminals show; they hold until the next call is asked for. */
  readonly voltsAt: (node: number) => number
}

/**
 * Direct current with given sets off hook, by their places among the sets, and all others on hook.
 *
 * A feed or one side of a ringdown unit bridges the pair at its node. A series battery stands in one leg of the set at its node, which
 * must be among those off hook. A source that would deliver more than its limit delivers just that. An electronic set draws nothing
 * below its `dropVolts`, and (V − dropVolts) / dcOhms above; its bridge makes the polarity no matter, and one source gives only one.
 *
 * Sets with a drop and the limit make the network piecewise linear. It is solved exactly: of the parts that are in the wrong state the
 * first changes over, until none is. All are passive, so that there is just one solution, and this rule cannot miss it.
 * Source: K. G. Murty, "Note on a Bard-type scheme for solving the complementarity problem", Opsearch 11 (1974) (from memory).
 */
export function callsFrom(
  model: CircuitModel,
  conditions: Conditions,
  terminals: Terminals,
): (offHook: readonly number[]) => DcCall {
  const { supply, node } = model.supply!
  const sourceVolts = Math.max(
    0,
    supply.volts * conditions.batteryFactor - (supply.indicator?.forwardVolts ?? 0),
  )
  const ownOhms = Math.max(LEAST_OHM, supply.ohms + (supply.indicator?.ohms ?? 0))
  const maxAmps = supply.maxMA === undefined ? Number.POSITIVE_INFINITY : supply.maxMA / 1000
  const isLimited = maxAmps < Number.POSITIVE_INFINITY
  const terminal = terminals.terminalOfNode[node]!
  const dcOhms = model.sets.map(({ set }) => Math.max(LEAST_OHM, set.offHook.dcOhms))
  const dropVolts = model.sets.map(({ set }) => set.offHook.dropVolts ?? 0)
  const bellSiemens = model.sets.map(({ set }) => onHookSiemens(set, 0).re)
  const atTerminal = model.sets.map((each) => terminals.terminalOfNode[each.node]!)
  const loads = new Loads(terminals)

  return (offHook) => {
    const carrier =
      supply.kind === 'series' ? offHook.find((index) => model.sets[index]!.node === node) : undefined
    const openVolts = sourceVolts - (carrier === undefined ? 0 : dropVolts[carrier]!)
    const siemens = 1 / (ownOhms + (carrier === undefined ? 0 : dcOhms[carrier]!))
    const canBlock = (index: number) => dropVolts[index]! > 0 && index !== carrier
    // In which state each part is: the battery's own set and every other set conducts or does not, the source gives its volts or just its limit.
    let [carries, isFree] = [true, true]
    const conducts = offHook.map(() => true)

    const solve = () => {
      loads.clear()
      if (!carries) loads.add(terminal, 0, 0)
      else if (isFree) loads.add(terminal, siemens, openVolts * siemens)
      else loads.add(terminal, 0, maxAmps)
      for (const [k, index] of offHook.entries()) {
        // Off hook a bell is taken off the pair, and the set laid across it, unless it stands in one leg with the battery.
        const own = index === carrier || !conducts[k] ? 0 : 1 / dcOhms[index]!
        loads.add(atTerminal[index]!, own - bellSiemens[index]!, own * dropVolts[index]!)
      }
      loads.solve()
    }
    const freeAmps = () => (openVolts - loads.voltsAt(terminal)) * siemens
    /** Changes over the first part that is in the wrong state; false where none is. */
    const changeOver = (): boolean => {
      if (isLimited && carries && (isFree ? freeAmps() > maxAmps : freeAmps() < maxAmps)) {
        isFree = !isFree
        return true
      }
      if (carrier !== undefined && dropVolts[carrier]! > 0) {
        if (carries ? freeAmps() < 0 : openVolts > loads.voltsAt(terminal)) {
          carries = !carries
          return true
        }
      }
      for (const [k, index] of offHook.entries()) {
        if (!canBlock(index)) continue
        const volts = loads.voltsAt(atTerminal[index]!)
        const isWrong = conducts[k] ? volts < dropVolts[index]! : volts > dropVolts[index]!
        if (!isWrong) continue
        conducts[k] = !conducts[k]
        return true
      }
      return false
    }
    solve()
    for (let changes = 2 ** (offHook.length + 2); changes > 0 && changeOver(); changes--) solve()
    const amps = carries ? (isFree ? freeAmps() : maxAmps) : 0
    const ampsOf = (index: number, k: number): number => {
      if (index === carrier) return amps
      return conducts[k] ? (loads.voltsAt(atTerminal[index]!) - dropVolts[index]!) / dcOhms[index]! : 0
    }
    return {
      mA: offHook.map((index, k) => 1000 * ampsOf(index, k)),
      amps,
      voltsAt: (at) => loads.voltsAt(terminals.terminalOfNode[at]!),
    }
  }
}

/** Conductances laid across the network at some terminals, and currents fed in there: v = Z (I − ΔY v), solved at those places. */
class Loads {
  readonly #terminals: Terminals
  readonly #places: number[] = []
  readonly #siemens: number[] = []
  readonly #amps: number[] = []
  #matrix = new Float64Array(9)
  #volts = new Float64Array(3)

  constructor(terminals: Terminals) {
    this.#terminals = terminals
  }

  clear(): void {
    this.#places.length = 0
    this.#siemens.length = 0
    this.#amps.length = 0
  }

  add(terminal: number, siemens: number, amps: number): void {
    const at = this.#places.indexOf(terminal)
    if (at !== -1) {
      this.#siemens[at]! += siemens
      this.#amps[at]! += amps
      return
    }
    this.#places.push(terminal)
    this.#siemens.push(siemens)
    this.#amps.push(amps)
  }

  solve(): void {
    const places = this.#places
    const count = places.length
    if (this.#volts.length < count) {
      this.#matrix = new Float64Array(count * count)
      this.#volts = new Float64Array(count)
    }
    for (let row = 0; row < count; row++) {
      const { re } = this.#terminals.column(places[row]!)
      let volts = 0
      for (let k = 0; k < count; k++) {
        const ohm = re[places[k]!]!
        this.#matrix[row * count + k] = (row === k ? 1 : 0) + ohm * this.#siemens[k]!
        volts += ohm * this.#amps[k]!
      }
      this.#volts[row] = volts
    }
    solveReal(this.#matrix, this.#volts, count)
  }

  voltsAt(terminal: number): number {
    const at = this.#places.indexOf(terminal)
    if (at !== -1) return this.#volts[at]!
    let volts = 0
    for (let k = 0; k < this.#places.length; k++) {
      const net = this.#amps[k]! - this.#siemens[k]! * this.#volts[k]!
      volts += this.#terminals.column(this.#places[k]!).re[terminal]! * net
    }
    return volts
  }
}
