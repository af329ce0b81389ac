import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { onHookSiemens } from './ringer'
import { solveReal } from './solve-real'
import type { Terminals } from './terminals'

/** A source or a set with less resistance than this is taken to have it, so that its current stays finite. */
const LEAST_OHM = 1e-6

/** Something laid across the network at one terminal: a conductance, and a current fed in. */
interface Load {
  readonly terminal: number
  readonly siemens: number
  readonly amps: number
}

/** What the battery does while some sets are off hook. */
export interface DcCall {
  /** Current through each of those sets, mA, in their order. */
  readonly mA: readonly number[]
  /** What the source delivers in all, A. */
  readonly amps: number
  /** Volts across the pair at a node that the terminals show. */
  readonly voltsAt: (node: number) => number
}

/**
 * A part that is in one of two states: a set behind its drop conducts or does not, a source gives its volts or just its limit.
 * `isWrong` tells, from a solution, that it must be in the other one.
 */
interface Switch {
  on: boolean
  readonly isWrong: (volts: (terminal: number) => number) => boolean
}

/**
 * Direct current with the given sets off hook and all others on hook.
 *
 * A feed or one side of a ringdown unit bridges the pair at its node. A series battery stands in one leg of the set at its node, which
 * must be among those off hook. A source that would deliver more than its limit delivers just that. An electronic set draws nothing
 * below its `dropVolts`, and (V − dropVolts) / dcOhms above; its bridge makes the polarity no matter, and one source gives only one.
 *
 * Sets with a drop and the limit make the network piecewise linear. It is solved exactly: of the parts that are in the wrong state the
 * first changes over, until none is. All are passive, so that there is just one solution, and this rule cannot miss it.
 * Source: K. G. Murty, "Note on a Bard-type scheme for solving the complementarity problem", Opsearch 11 (1974) (from memory).
 *
 * @param sets indices of the sets off hook
 */
export function dcCall(
  model: CircuitModel,
  conditions: Conditions,
  terminals: Terminals,
  sets: readonly number[],
): DcCall {
  const { supply, node } = model.supply!
  const carrier =
    supply.kind === 'series' ? sets.find((index) => model.sets[index]!.node === node) : undefined
  const dcOhms = (index: number) => Math.max(LEAST_OHM, model.sets[index]!.set.offHook.dcOhms)
  const dropVolts = (index: number) => model.sets[index]!.set.offHook.dropVolts ?? 0

  const sourceVolts = Math.max(
    0,
    supply.volts * conditions.batteryFactor - (supply.indicator?.forwardVolts ?? 0),
  )
  const openVolts = sourceVolts - (carrier === undefined ? 0 : dropVolts(carrier))
  const ownOhms = Math.max(LEAST_OHM, supply.ohms + (supply.indicator?.ohms ?? 0))
  const siemens = 1 / (ownOhms + (carrier === undefined ? 0 : dcOhms(carrier)))
  const maxAmps = supply.maxMA === undefined ? Number.POSITIVE_INFINITY : supply.maxMA / 1000
  const terminal = terminals.terminalOfNode[node]!

  const free = (volts: (terminal: number) => number) => (openVolts - volts(terminal)) * siemens
  const carries: Switch = {
    on: true,
    isWrong: (volts) => (carries.on ? free(volts) < 0 : openVolts > volts(terminal)),
  }
  const unlimited: Switch = {
    on: true,
    isWrong: (volts) => carries.on && (unlimited.on ? free(volts) > maxAmps : free(volts) < maxAmps),
  }
  const across = sets.map((index) => {
    const set = model.sets[index]!
    const at = terminals.terminalOfNode[set.node]!
    const drop = dropVolts(index)
    const conducts: Switch = {
      on: true,
      isWrong: (volts) => (conducts.on ? volts(at) < drop : volts(at) > drop),
    }
    const load = (): Load => {
      // Off hook a bell is taken off the pair, and the set laid across it, unless it stands in one leg with the battery.
      const own = index === carrier || !conducts.on ? 0 : 1 / dcOhms(index)
      return { terminal: at, siemens: own - onHookSiemens(set.set, 0).re, amps: own * drop }
    }
    const amps = (volts: (terminal: number) => number) =>
      conducts.on ? (volts(at) - drop) / dcOhms(index) : 0
    return { load, amps, conducts, canBlock: drop > 0 && index !== carrier }
  })
  const source = (): Load => {
    if (!carries.on) return { terminal, siemens: 0, amps: 0 }
    return unlimited.on
      ? { terminal, siemens, amps: openVolts * siemens }
      : { terminal, siemens: 0, amps: maxAmps }
  }
  const switches = [
    ...(maxAmps < Number.POSITIVE_INFINITY ? [unlimited] : []),
    ...(carrier !== undefined && dropVolts(carrier) > 0 ? [carries] : []),
    ...across.filter(({ canBlock }) => canBlock).map(({ conducts }) => conducts),
  ]
  const solve = () => voltsUnder(terminals, [source(), ...across.map(({ load }) => load())])
  let volts = solve()
  for (let changes = 2 ** switches.length; changes > 0; changes--) {
    const wrong = switches.find((each) => each.isWrong(volts))
    if (!wrong) break
    wrong.on = !wrong.on
    volts = solve()
  }
  const amps = carries.on ? (unlimited.on ? free(volts) : maxAmps) : 0
  return {
    mA: sets.map((index, k) => 1000 * (index === carrier ? amps : across[k]!.amps(volts))),
    amps,
    voltsAt: (at) => volts(terminals.terminalOfNode[at]!),
  }
}
/** Volts at any terminal under some loads: v = Z (I − ΔY v), solved at the places of the loads, three at most in a call. */
function voltsUnder(terminals: Terminals, loads: readonly Load[]): (terminal: number) => number {
  const places = [...new Set(loads.map(({ terminal }) => terminal))]
  const total = (place: number, key: 'siemens' | 'amps') =>
    loads.reduce((sum, load) => (load.terminal === place ? sum + load[key] : sum), 0)
  const siemens = places.map((place) => total(place, 'siemens'))
  const amps = places.map((place) => total(place, 'amps'))
  const z = (a: number, b: number) => terminals.column(a).re[b]!
  const sum = (row: number, each: readonly number[]) =>
    places.reduce((volts, place, k) => volts + z(row, place) * each[k]!, 0)

  const matrix = places.map((row, r) =>
    places.map((column, c) => (r === c ? 1 : 0) + z(row, column) * siemens[c]!),
  )
  const volts = solveReal(
    matrix,
    places.map((row) => sum(row, amps)),
  )
  const net = amps.map((amp, k) => amp - siemens[k]! * volts[k]!)
  return (terminal) => (places.includes(terminal) ? volts[places.indexOf(terminal)]! : sum(terminal, net))
}
